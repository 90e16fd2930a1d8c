import { arrangePages, drawPhoto, roomOnPage, type Drawing, type Page } from '#core/drawing';
import type { MeasuredShape, Project } from '#core/project';

/** Height that lets two photos stand on one page, mm. */
const share = 118;

/** The photos of a shape with what was drawn on them. */
function drawPhotos({ photos = [] }: MeasuredShape, width: number): readonly Drawing[] {
  return photos.map((photo) => drawPhoto(photo, { width: width - 6, height: share }));
}

/** Pages of the photos taken of the shapes of a project, shape after shape. */
export function drawPhotoPages({ shapes, paper, name }: Project): readonly Page[] {
  const { width } = roomOnPage(paper, false);
  return shapes.flatMap((shape) =>
    arrangePages(drawPhotos(shape, width), paper, `${name} · ${shape.name}, photos`),
  );
}
