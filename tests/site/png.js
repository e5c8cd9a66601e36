/* Small PNG and JPEG files for the tests, made from a function of x and y. */
'use strict';
const zlib = require('zlib');

const table = Array.from({ length: 256 }, (_, n) => {
  for (let k = 0; k < 8; k++) n = n & 1 ? 0xedb88320 ^ (n >>> 1) : n >>> 1;
  return n >>> 0;
});
const crc = (bytes) => (bytes.reduce((sum, b) => table[(sum ^ b) & 255] ^ (sum >>> 8), 0xffffffff) ^ 0xffffffff) >>> 0;

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type), data]), out = Buffer.alloc(body.length + 8);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(crc(body), body.length + 4);
  return out;
}

/* `colour(x, y)` gives [red, green, blue] or, with `alpha`, four numbers (PNG, RFC 2083). */
function png(width, height, colour, alpha = false) {
  const size = alpha ? 4 : 3, head = Buffer.alloc(13), rows = Buffer.alloc(height * (1 + width * size));
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, alpha ? 6 : 2], 8);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      rows.set(colour(x, y), y * (1 + width * size) + 1 + x * size);
  return Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10]), chunk('IHDR', head),
    chunk('IDAT', zlib.deflateSync(rows)), chunk('IEND', Buffer.alloc(0))]);
}

/* The JPEG file `jpeg` with Exif data: an orientation (1 to 8), a camera, a place on earth
 * (Exif 2.3: tags 0x0112, 0x0110 and the GPS directory 0x8825). */
function withExif(jpeg, orientation) {
  const camera = 'Boathouse camera\0', tiff = Buffer.alloc(160);
  const entry = (at, tag, type, count, value) => {
    tiff.writeUInt16BE(tag, at);
    tiff.writeUInt16BE(type, at + 2);
    tiff.writeUInt32BE(count, at + 4);
    if (type === 3 && count === 1) tiff.writeUInt16BE(value, at + 8);
    else if (typeof value === 'string') tiff.write(value, at + 8, 'latin1');
    else tiff.writeUInt32BE(value, at + 8);
  };
  tiff.write('MM\0*', 0, 'latin1');
  tiff.writeUInt32BE(8, 4);
  tiff.writeUInt16BE(3, 8);
  entry(10, 0x0110, 2, camera.length, 90);
  entry(22, 0x0112, 3, 1, orientation);
  entry(34, 0x8825, 4, 1, 50);
  tiff.writeUInt16BE(2, 50);
  entry(52, 0x0001, 2, 2, 'N\0\0\0');
  entry(64, 0x0002, 5, 3, 110);
  tiff.write(camera, 90, 'latin1');
  [54, 1, 19, 1, 5, 1].forEach((n, i) => tiff.writeUInt32BE(n, 110 + 4 * i));
  const length = Buffer.alloc(2);
  length.writeUInt16BE(2 + 6 + tiff.length);
  return Buffer.concat([jpeg.subarray(0, 2), Buffer.from([0xff, 0xe1]), length,
    Buffer.from('Exif\0\0', 'latin1'), tiff, jpeg.subarray(2)]);
}

module.exports = { png, withExif };
