import { encode } from "uqr";

/** Light modules around the code, as ISO/IEC 18004 asks for. */
const quiet = 4;

/** One path over the dark modules of a code, row by row. */
export function qrPath(text: string): { readonly path: string; readonly size: number } {
  const { data, size } = encode(text, { ecc: "M", border: quiet });
  let path = "";
  data.forEach((row, y) => {
    row.forEach((dark, x) => {
      if (dark) path += `M${x} ${y}h1v1h-1z`;
    });
  });
  return { path, size };
}

/** A text as a QR code to be scanned from the screen or from paper: dark on light in either theme. */
export function Qr({ text, label }: { readonly text: string; readonly label: string }) {
  const { path, size } = qrPath(text);
  return (
    <svg class="qr" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={label} shape-rendering="crispEdges">
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
}
