import { ease } from "../../math";
import { LAMP_HALF_ANGLE } from "./light";

/** Reflectance of a non-metal looked at straight (index of refraction about 1.54). */
const PLAIN_REFLECTANCE = 0.045;
/** Nearly neutral light: a warm torch, a slightly cool workshop. */
export const TORCH_COLOUR = [1.03, 1, 0.955] as const;
export const WORKSHOP_COLOUR = [0.99, 1, 1.015] as const;

/** Cosine between surface and lamp for a lamp with a size: it sets gradually. */
export function softFacing(facing: number): number {
  if (facing > LAMP_HALF_ANGLE) return facing;
  return facing < -LAMP_HALF_ANGLE ? 0 : (facing + LAMP_HALF_ANGLE) ** 2 / (4 * LAMP_HALF_ANGLE);
}

/**
 * GGX highlight (Walter and others, "Microfacet models for refraction through rough surfaces", 2007), stretched across the
 * brushing (Burley, "Physically based shading at Disney", 2012), for a viewer straight above. `nx, ny, nz` surface normal,
 * `lx, ly, lz` towards the lamp; brush 0..1 with its direction as doubled angle.
 */
export function highlight(
  nx: number,
  ny: number,
  nz: number,
  lx: number,
  ly: number,
  lz: number,
  facing: number,
  rough: number,
  brush: number,
  cosine: number,
  sine: number,
): number {
  const length = 1 / Math.sqrt(lx * lx + ly * ly + (lz + 1) * (lz + 1));
  const hx = lx * length;
  const hy = ly * length;
  const hz = (lz + 1) * length;
  const along = Math.max(0, nx * hx + ny * hy + nz * hz);
  const width = Math.min(1, rough * rough + 0.3 * LAMP_HALF_ANGLE);
  let density: number;
  if (brush > 0.05) {
    const tx = Math.sqrt(Math.max(0, 0.5 * (1 + cosine)));
    const ty = (sine < 0 ? -1 : 1) * Math.sqrt(Math.max(0, 0.5 * (1 - cosine)));
    const lengthwise = hx * tx + hy * ty - (nx * tx + ny * ty) * along;
    const crosswise = hy * tx - hx * ty - (ny * tx - nx * ty) * along;
    const narrow = width * (1 - 0.45 * brush);
    const wide = width * (1 + brush);
    const e = (lengthwise * lengthwise) / (narrow * narrow) + (crosswise * crosswise) / (wide * wide) + along * along;
    density = 1 / (Math.PI * narrow * wide * e * e);
  } else {
    const squared = width * width;
    const e = along * along * (squared - 1) + 1;
    density = squared / (Math.PI * e * e);
  }
  const k = ((rough + 1) * (rough + 1)) / 8;
  const masking = (facing / (facing * (1 - k) + k + 1e-4)) * (nz / (nz * (1 - k) + k));
  return Math.min(6, (density * masking) / (4 * Math.max(0.04, facing) * Math.max(0.2, nz)));
}

/** Workshop seen in the mirror of the surface: a grey hall with two soft strips of windows; (nx, up) is the normal as on the screen. */
export function workshopReflection(nx: number, up: number, nz: number, rough: number): number {
  const skyward = 2 * nz * nz - 1;
  const right = 2 * nz * nx;
  const upward = 2 * nz * up;
  const near = (upward - 0.42) / (0.16 + rough * 0.5);
  const far = (upward + 0.6) / (0.2 + rough * 0.5);
  return (
    0.2 +
    0.6 * ease(-0.2, 0.9, skyward) * (0.75 + 0.25 * right) +
    0.7 * Math.exp(-near * near) +
    0.35 * Math.exp(-far * far)
  );
}

/** Light of one colour channel sent to the viewer. */
export function sentLight(
  albedo: number,
  metal: number,
  schlick: number,
  glint: number,
  direct: number,
  workshopDiffuse: number,
  workshopMirror: number,
  bounced: number,
): number {
  const base = PLAIN_REFLECTANCE + (albedo * 1.05 - PLAIN_REFLECTANCE) * metal;
  const fresnel = base + (1 - base) * schlick;
  const diffuse = (albedo * (1 - metal * 0.85)) / Math.PI;
  return (
    (diffuse * (1 - fresnel) + fresnel * glint) * direct +
    diffuse * workshopDiffuse +
    base * workshopMirror +
    (diffuse + 0.3 * base * metal) * bounced
  );
}
