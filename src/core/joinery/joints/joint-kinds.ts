/** How the end of a board can stand on the face of another. */
export type EndOnFace = 'housing' | 'butt' | 'dowel' | 'loose-tenon';
