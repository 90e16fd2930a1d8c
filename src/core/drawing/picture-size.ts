const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Size of a picture in its own dots. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
  readonly format: 'jpeg' | 'png';
}

/** The size of a JPEG or PNG kept as a data URL, read from its head (ITU-T T.81 B.2.2, W3C PNG 11.2.2, from memory); null for anything else. */
export function readPictureSize(dataUrl: string): PictureSize | null {
  const at = dataUrl.indexOf(';base64,');
  if (at < 0) return null;
  const read = byteReader(dataUrl, at + ';base64,'.length);
  const size =
    read(0) === 0x89 ? readPng(read) : read(0) === 0xff && read(1) === 0xd8 ? readJpeg(read) : null;
  return size && size.width > 0 && size.height > 0 ? size : null;
}

type Read = (index: number) => number;

/** Bytes of base64 text without decoding the whole of it; beyond its end 0. */
function byteReader(text: string, start: number): Read {
  const sextet = (index: number): number => Math.max(0, alphabet.indexOf(text.charAt(start + index) || 'A'));
  return (index) => {
    const [group, rest] = [Math.floor(index / 3) * 4, index % 3];
    const bits = [0, 1, 2, 3].reduce((sum, i) => sum * 64 + sextet(group + i), 0);
    return Math.floor(bits / 256 ** (2 - rest)) % 256;
  };
}

function readPng(read: Read): PictureSize {
  const word = (at: number): number =>
    ((read(at) * 256 + read(at + 1)) * 256 + read(at + 2)) * 256 + read(at + 3);
  return { width: word(16), height: word(20), format: 'png' };
}

/** Segments are passed over until the one that begins a frame. */
function readJpeg(read: Read): PictureSize | null {
  const pair = (at: number): number => read(at) * 256 + read(at + 1);
  for (let at = 2; read(at) === 0xff && pair(at + 2) > 0; at += 2 + pair(at + 2)) {
    const marker = read(at + 1);
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame) return { width: pair(at + 7), height: pair(at + 5), format: 'jpeg' };
  }
  return null;
}
