export type PieceId = string;
export type MaterialId = string;
