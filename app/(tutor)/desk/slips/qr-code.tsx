import { encode } from "uqr";

/** Light border that readers need around the code, in modules (ISO/IEC 18004). */
const QUIET_ZONE = 4;

/** A text as a QR code, dark on white whatever the colours of the page. */
export function QrCode({ text, label }: { readonly text: string; readonly label: string }) {
  const { data, size } = encode(text, { ecc: "M", border: QUIET_ZONE });
  const dark = data.flatMap((line, y) => line.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : []))).join("");
  return (
    <svg
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
      className="w-full [forced-color-adjust:none] [print-color-adjust:exact]"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={dark} fill="#000" />
    </svg>
  );
}
