import assert from "node:assert/strict";
import { test } from "node:test";
import jsQR from "jsqr";
import { qrPath } from "../src/ui/qr.tsx";

/** The picture of a code, eight pixels a module, as a camera would give it. */
function pixelsOf(text: string) {
  const { path, size } = qrPath(text);
  const scale = 8;
  const width = size * scale;
  const pixels = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g))
    for (let row = 0; row < scale; ++row)
      for (let column = 0; column < scale; ++column) {
        const at = ((Number(y) * scale + row) * width + Number(x) * scale + column) * 4;
        pixels.fill(0, at, at + 3);
      }
  return { pixels, width };
}

test("what is drawn is read back by another library (jsQR 1.4.0, a decoder of ISO/IEC 18004)", () => {
  for (const text of ["http://192.168.1.20:8080/#person=Zm9vYmFyYmF6cXV4Zm9vYmFyYmF6cXV4Zm9vYmFyYmF6", "Ünï"]) {
    const { pixels, width } = pixelsOf(text);
    assert.equal(jsQR(pixels, width, width)?.data, text);
  }
});

test("four light modules stand around the code, as ISO/IEC 18004 asks for", () => {
  const { path, size } = qrPath("repwright");
  const at = [...path.matchAll(/M(\d+) (\d+)/g)].flatMap(([, x, y]) => [Number(x), Number(y)]);
  assert.equal(Math.min(...at), 4);
  assert.equal(Math.max(...at), size - 5);
});
