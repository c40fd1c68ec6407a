import { fragmentShader, type Quality, VERTEX_SHADER } from "./specimen-shader";
import { SAMPLERS } from "./webgl-textures";

const UNIFORMS = [
  "uCorner",
  "uMmPerPx",
  "uSide",
  "uSeen",
  "uStrip",
  "uPlate",
  "uLamp",
  "uHighest",
  "uExposure",
] as const;

export interface Program {
  readonly program: WebGLProgram;
  readonly uniforms: Readonly<Record<(typeof UNIFORMS)[number], WebGLUniformLocation | null>>;
}

/** Compiles the light at a quality; throws with the compiler's words where that fails. */
export function buildProgram(gl: WebGL2RenderingContext, quality: Quality): Program {
  const program = gl.createProgram();
  for (const [kind, source] of [
    [gl.VERTEX_SHADER, VERTEX_SHADER],
    [gl.FRAGMENT_SHADER, fragmentShader(quality)],
  ] as const) {
    const shader = gl.createShader(kind)!;
    gl.shaderSource(shader, source);
    gl.compileShader(shader);
    if (!gl.getShaderParameter(shader, gl.COMPILE_STATUS)) throw new Error(gl.getShaderInfoLog(shader) ?? "shader");
    gl.attachShader(program, shader);
  }
  gl.linkProgram(program);
  if (!gl.getProgramParameter(program, gl.LINK_STATUS)) throw new Error(gl.getProgramInfoLog(program) ?? "program");
  // biome-ignore lint/correctness/useHookAtTopLevel: a WebGL call, no hook
  gl.useProgram(program);
  SAMPLERS.forEach((name, unit) => {
    gl.uniform1i(gl.getUniformLocation(program, name), unit);
  });
  return {
    program,
    uniforms: Object.fromEntries(
      UNIFORMS.map((name) => [name, gl.getUniformLocation(program, name)]),
    ) as Program["uniforms"],
  };
}
