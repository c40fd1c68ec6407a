import { TORCH_DISTANCE, WORKSHOP_LIGHT } from "@/lib/bench";

/**
 * The light on the specimen, worked out for every pixel of the screen: a lamp with a size at a place, horizon march for
 * its shadow through the smoothed heights, microfacet reflection stretched along brushed scratches, ambient light by
 * open sky, light sent back by lit metal nearby. Everything is in the bench frame (x along the weld, y up the screen), mm.
 */
export interface Quality {
  readonly steps: number;
  readonly growth: number;
  readonly isFine: boolean;
}

export const FULL_QUALITY: Quality = { steps: 32, growth: 1.19, isFine: true };
export const MOVING_QUALITY: Quality = { steps: 12, growth: 1.55, isFine: false };

export const VERTEX_SHADER = `#version 300 es
void main() {
  vec2 corner = vec2(float((gl_VertexID << 1) & 2), float(gl_VertexID & 2));
  gl_Position = vec4(corner * 2.0 - 1.0, 0.0, 1.0);
}`;

const HEAD = `#version 300 es
precision highp float;
precision highp sampler2D;
uniform sampler2D uStripRelief, uStripAlbedo, uStripFinish, uStripBrushing;
uniform sampler2D uPlateRelief, uPlateAlbedo, uPlateFinish, uPlateBrushing;
uniform sampler2D uDetail;
uniform vec2 uCorner;    // bottom left of the picture, mm
uniform float uMmPerPx;
uniform float uSide;     // +1 cap face, -1 all others: direction of the face's y on the screen
uniform vec3 uSeen;      // length, lower and upper edge of what is seen, mm in the bench frame
uniform vec2 uStrip;     // fine strip and whole plate: y where they begin, and how wide they are, mm
uniform vec2 uPlate;
uniform vec3 uLamp;
uniform float uHighest;
uniform float uExposure;
out vec4 colour;

const float PI = 3.14159265;
const float DROP = 10.0;          // bench below the upper side of the plate
const float SOFT = 0.12;          // half angular size of the lamp, radians
const float READ = 0.667;         // share of the lamp's disc over which heights are read: over all of it crests sink
const float POWER = 3.4;
const float AMBIENT = ${WORKSHOP_LIGHT};
const float REACH = ${TORCH_DISTANCE.toFixed(1)};        // distance at which the lamp has its nominal power
const vec3 LAMP_COLOUR = vec3(1.03, 1.0, 0.955);
const vec3 SHOP_COLOUR = vec3(0.99, 1.0, 1.015);
`;

const SURFACE = `
vec2 stripUv(vec2 p) { return vec2(p.x / uSeen.x, (p.y * uSide - uStrip.x) / uStrip.y); }
vec2 plateUv(vec2 p) { return vec2(p.x / uSeen.x, (p.y * uSide - uPlate.x) / uPlate.y); }
// how far inside the strip a place lies; where the strip ends with the plate there is no border
float insideStrip(vec2 p) {
  float from = p.y * uSide - uStrip.x, to = uStrip.y - from;
  if (uStrip.x <= uPlate.x) from = 99.0;
  if (uStrip.x + uStrip.y >= uPlate.x + uPlate.y) to = 99.0;
  return min(from, to);
}
// from the nearest edge inward, along and across
vec2 inwardFrom(vec2 p) { return vec2(min(p.x, uSeen.x - p.x), min(p.y - uSeen.y, uSeen.z - p.y)); }
float levelOf(float width, float perMm) { return max(0.0, log2(width * perMm)); }

// cubic B-spline in four bilinear reads: no facets when magnified
vec4 smoothRead(sampler2D map, vec2 uv) {
  vec2 size = vec2(textureSize(map, 0));
  vec2 at = uv * size - 0.5, f = fract(at), g = 1.0 - f;
  vec2 w0 = g * g * g / 6.0, w3 = f * f * f / 6.0;
  vec2 w1 = (4.0 + f * f * (3.0 * f - 6.0)) / 6.0, w2 = 1.0 - w0 - w1 - w3;
  vec2 s0 = w0 + w1, s1 = w2 + w3, base = floor(at) + 0.5;
  vec2 near = (base - 1.0 + w1 / s0) / size, far = (base + 1.0 + w3 / s1) / size;
  return s0.y * (s0.x * textureLod(map, near, 0.0) + s1.x * textureLod(map, vec2(far.x, near.y), 0.0))
       + s1.y * (s0.x * textureLod(map, vec2(near.x, far.y), 0.0) + s1.x * textureLod(map, far, 0.0));
}

struct Look { float z; vec2 slope; float sky; vec3 albedo; float rough; float metal; float brushed; vec2 along; };

Look lookAt(vec4 relief, vec3 albedo, vec3 finish, vec2 brushing) {
  // stored as 128 + 127 v; where directions mix the vector is short and the scratches are weak
  vec2 along = (brushing * 255.0 - 128.0) / 127.0;
  float together = min(1.0, length(along));
  return Look(relief.r, vec2(relief.g, relief.b * uSide), relief.a, albedo, finish.r, finish.g, finish.b * together,
    along * vec2(1.0, uSide));
}
Look stripLook(vec2 p) {
  vec2 uv = stripUv(p);
  float level = levelOf(uMmPerPx * 0.8, 8.0);
  vec4 relief = FINE && uMmPerPx < 0.09 ? smoothRead(uStripRelief, uv) : textureLod(uStripRelief, uv, level);
  return lookAt(relief, textureLod(uStripAlbedo, uv, level).rgb, textureLod(uStripFinish, uv, level).rgb,
    textureLod(uStripBrushing, uv, 0.0).rg);
}
Look plateLook(vec2 p) {
  vec2 uv = plateUv(p);
  float level = levelOf(uMmPerPx * 0.8, 4.0);
  vec4 relief = FINE && uMmPerPx < 0.18 ? smoothRead(uPlateRelief, uv) : textureLod(uPlateRelief, uv, level);
  return lookAt(relief, textureLod(uPlateAlbedo, uv, level).rgb, textureLod(uPlateFinish, uv, level).rgb,
    textureLod(uPlateBrushing, uv, 0.0).rg);
}
Look lookMix(Look a, Look b, float t) {
  return Look(mix(a.z, b.z, t), mix(a.slope, b.slope, t), mix(a.sky, b.sky, t), mix(a.albedo, b.albedo, t),
    mix(a.rough, b.rough, t), mix(a.metal, b.metal, t), mix(a.brushed, b.brushed, t), mix(a.along, b.along, t));
}
// the strip fades into the coarser plate inside its own border, where both show the same metal
Look surfaceLook(vec2 p) {
  if (uMmPerPx > 0.24) return plateLook(p);
  float t = 1.0 - smoothstep(0.6, 3.5, insideStrip(p));
  if (t <= 0.0) return stripLook(p);
  if (t >= 1.0) return plateLook(p);
  return lookMix(stripLook(p), plateLook(p), t);
}
// height of a patch of about the given width
float heightAround(vec2 p, float width) {
  if (insideStrip(p) > 1.0 && width < 0.4) return textureLod(uStripRelief, stripUv(p), clamp(levelOf(width, 8.0) - 0.8, 0.0, 4.0)).r;
  return textureLod(uPlateRelief, plateUv(p), clamp(levelOf(width, 4.0) - 0.8, 0.0, 4.0)).r;
}
`;

const DETAIL = `
// texture finer than the surface is stored, faded in as the view magnifies; it lies on the face, not on the screen
void addDetail(vec2 p, inout Look look) {
  float share = smoothstep(1.2, 3.2, 0.125 / uMmPerPx);
  if (share <= 0.0) return;
  vec2 q = vec2(p.x, p.y * uSide);
  vec4 grain = textureLod(uDetail, q / 9.0 + 0.37, 0.0) * 2.0 - 1.0;
  look.slope += grain.rg * vec2(1.0, uSide) * 0.032 * share * (1.0 - 0.7 * look.brushed) * (0.4 + look.rough);
  look.albedo *= 1.0 + 0.05 * share * grain.r;
  if (look.brushed < 0.03) return;
  // two fixed directions of twelve, blended: a frame that turned with the scratches would swirl
  float turn = fract(0.5 * atan(look.along.y, look.along.x) / PI) * 12.0, first = floor(turn);
  for (int k = 0; k < 2; k++) {
    float angle = (first + float(k)) * PI / 12.0;
    vec2 e = vec2(cos(angle), sin(angle)), across = vec2(-e.y, e.x);
    vec4 fine = textureLod(uDetail, vec2(dot(p, e) / 26.0, dot(p, across) / 11.0) + float(k) * 0.31, 0.0) * 2.0 - 1.0;
    float weight = (k == 0 ? 1.0 - (turn - first) : turn - first) * share * look.brushed;
    look.slope += across * fine.b * 0.09 * weight;
    look.albedo *= 1.0 + 0.08 * fine.a * weight;
  }
}
`;

const SHADOW = `
bool isOffPlate(vec2 p) { return min(inwardFrom(p).x, inwardFrom(p).y) < 0.0; }

// share of the lamp's disc that stands above the horizon; angles are compared, so a far edge throws a wide penumbra
float lampSeen(vec2 p, float z, vec2 direction, float tanLamp) {
  float lowest = (tanLamp - SOFT) / (1.0 + tanLamp * SOFT);
  float t = max(uMmPerPx * 0.9, 0.075), best = -9.0, bestT = 0.0, bestWidth = 0.0;
  float least = uMmPerPx * 0.55;
  for (int k = 0; k < STEPS; k++) {
    if (t * lowest > uHighest - z) break;
    vec2 q = p + direction * t;
    if (isOffPlate(q)) break;
    float width = max(t * READ * SOFT, least);
    float rise = (heightAround(q, width) - z - 0.004) / t;
    if (rise > best) { best = rise; bestT = t; bestWidth = width; }
    t *= k < 7 && FINE ? 1.28 : GROWTH;
  }
  if (best < lowest * 0.9) return 1.0;
  if (FINE) {
    for (int k = 0; k < 2; k++) { // the crest lies between two steps
      float u = bestT * (k == 0 ? 0.92 : 1.085);
      best = max(best, (heightAround(p + direction * u, bestWidth) - z - 0.004) / u);
    }
  }
  if (bestT > 0.5) best /= 1.0 - 0.5 * READ * SOFT; // smoothing lowers crests
  return smoothstep(-1.0, 1.0, (atan(tanLamp) - atan(best)) / SOFT);
}
`;

const LIGHT = `
vec3 toScreenColour(vec3 c) {
  c = clamp(c * (2.51 * c + 0.03) / (c * (2.43 * c + 0.59) + 0.14), 0.0, 1.0);
  return mix(12.92 * c, 1.055 * pow(max(c, 1e-5), vec3(1.0 / 2.4)) - 0.055, step(0.0031308, c));
}

// a dim workshop: an even ceiling and two soft strips of light
float workshop(vec3 r, float rough) {
  float low = (r.y - 0.42) / (0.16 + rough * 0.5), high = (r.y + 0.6) / (0.2 + rough * 0.5);
  return 0.2 + 0.6 * smoothstep(-0.2, 0.9, r.z) * (0.75 + 0.25 * r.x) + 0.7 * exp(-low * low) + 0.35 * exp(-high * high);
}

vec3 metalColour(vec2 p) {
  Look look = surfaceLook(p);
  if (FINE) addDetail(p, look);
  // the plate's edges are broken by a narrow chamfer
  vec2 inward = inwardFrom(p);
  vec2 outside = vec2(p.x < 0.5 * uSeen.x ? 1.0 : -1.0, p.y < 0.5 * (uSeen.y + uSeen.z) ? 1.0 : -1.0);
  look.slope += outside * 0.7 * (1.0 - smoothstep(0.15, 0.55, inward));

  float steep = length(look.slope);
  if (steep > 1.6) look.slope *= (1.6 + (steep - 1.6) * 0.35) / steep; // walls thinner than a texel
  vec3 n = normalize(vec3(-look.slope, 1.0));
  float bend = FINE ? length(dFdx(n.xy)) + length(dFdy(n.xy)) : 0.15;
  float rough = max(look.rough, 0.12);
  rough = min(1.0, sqrt(rough * rough + min(0.5, 0.6 * bend * bend + 0.1 * max(0.0, steep - 0.9))));

  vec3 toLamp = uLamp - vec3(p, look.z);
  float distance2 = dot(toLamp, toLamp);
  vec3 l = toLamp * inversesqrt(distance2);
  float power = POWER * REACH * REACH / distance2;
  float flatLength = max(length(l.xy), 1e-4);
  float facing = dot(n, l);
  float seen = facing > -SOFT ? lampSeen(p, look.z, l.xy / flatLength, l.z / flatLength) : 0.0;
  facing = facing > SOFT ? facing : facing < -SOFT ? 0.0 : (facing + SOFT) * (facing + SOFT) / (4.0 * SOFT);

  vec3 h = normalize(l + vec3(0.0, 0.0, 1.0));
  float nh = max(0.0, dot(n, h)), lh = max(0.0, dot(l, h));
  float alpha = min(1.0, rough * rough + 0.3 * SOFT);
  float angle = 0.5 * atan(look.along.y, look.along.x);
  vec2 along = vec2(cos(angle), sin(angle)), across = vec2(-along.y, along.x);
  vec2 aside = (h - n * nh).xy;
  float alphaAlong = alpha * (1.0 - 0.45 * look.brushed), alphaAcross = alpha * (1.0 + look.brushed);
  float ha = dot(aside, along) / alphaAlong, hb = dot(aside, across) / alphaAcross;
  float e = ha * ha + hb * hb + nh * nh;
  float lobe = 1.0 / (PI * alphaAlong * alphaAcross * e * e);
  float k = (rough + 1.0) * (rough + 1.0) / 8.0;
  float masking = facing / (facing * (1.0 - k) + k + 1e-4) * (n.z / (n.z * (1.0 - k) + k)) / (4.0 * max(0.04, facing) * max(0.2, n.z));
  float shine = min(6.0, lobe * masking);

  vec3 f0 = mix(vec3(0.045), look.albedo * 1.05, look.metal);
  vec3 fresnel = f0 + (1.0 - f0) * pow(1.0 - lh, 5.0);
  vec3 diffuse = look.albedo * (1.0 - 0.85 * look.metal) / PI;
  vec3 mirror = vec3(2.0 * n.z * n.xy, 2.0 * n.z * n.z - 1.0);
  float sky = look.sky < 1.0 ? look.sky / (1.0 - 0.4 * (1.0 - look.sky)) : look.sky;
  float dome = 0.62 + 0.38 * n.z + 0.12 * n.y;

  vec3 lamp = (diffuse * (1.0 - fresnel) + fresnel * shine) * power * seen * facing * LAMP_COLOUR;
  vec3 ambient = (diffuse * PI * dome * 0.95 + f0 * workshop(mirror, rough) * (1.0 - 0.35 * rough)) * AMBIENT * sky * SHOP_COLOUR;
  vec3 back = vec3(0.0);
  if (FINE) {
    vec4 around = textureLod(uPlateRelief, plateUv(p), 3.0);
    float lit = max(0.0, dot(normalize(vec3(-around.g, -around.b * uSide, 1.0)), l));
    float sent = lit * (0.25 + 0.5 * textureLod(uPlateAlbedo, plateUv(p), 3.0).g);
    back = (diffuse + 0.3 * f0 * look.metal) * power * sent * (0.1 + 0.62 * max(0.0, 1.0 - look.sky)) * LAMP_COLOUR;
  }
  return lamp + ambient + back;
}
`;

const BENCH = `
float scatter(vec2 q) { return fract(sin(dot(q, vec2(12.9898, 78.233))) * 43758.5453); }
float cloud(vec2 q) {
  vec2 i = floor(q), f = fract(q);
  f = f * f * (3.0 - 2.0 * f);
  return mix(mix(scatter(i), scatter(i + vec2(1, 0)), f.x), mix(scatter(i + vec2(0, 1)), scatter(i + vec2(1, 1)), f.x), f.y);
}

// the bench top below the plate: dull, dark, worn; the plate throws its shadow on it
vec3 benchColour(vec2 p) {
  float wear = 0.55 * cloud(p / 37.0) + 0.3 * cloud(p / 9.0) + 0.15 * cloud(p * vec2(0.35, 2.1));
  vec3 albedo = vec3(0.021, 0.0235, 0.026) * (0.72 + 0.56 * wear);
  vec3 toLamp = uLamp - vec3(p, -DROP);
  float distance2 = dot(toLamp, toLamp);
  vec3 l = toLamp * inversesqrt(distance2);
  float flatLength = max(length(l.xy), 1e-4);
  vec2 d = l.xy / flatLength;
  d += vec2(equal(d, vec2(0.0))) * 1e-5;
  vec2 low = vec2(0.0, uSeen.y), high = vec2(uSeen.x, uSeen.z);
  vec2 one = (low - p) / d, two = (high - p) / d;
  float enter = max(min(one.x, two.x), min(one.y, two.y)), leave = min(max(one.x, two.x), max(one.y, two.y));
  float seen = 1.0;
  if (leave > max(enter, 0.0)) {
    float rise = atan(DROP / max(enter, 0.05)) - atan(l.z / flatLength);
    seen = smoothstep(1.0, -1.0, rise / SOFT);
    seen = mix(1.0, seen, smoothstep(0.0, 3.0, leave - max(enter, 0.0)));
  }
  vec2 beyond = max(max(low - p, p - high), 0.0);
  float open = mix(0.35, 1.0, smoothstep(0.0, 14.0, length(beyond)));
  float power = POWER * REACH * REACH / distance2;
  return albedo * (power * seen * l.z * LAMP_COLOUR * 0.55 + AMBIENT * open * 2.2 * SHOP_COLOUR);
}

void main() {
  vec2 p = uCorner + gl_FragCoord.xy * uMmPerPx;
  vec2 inward = inwardFrom(p);
  float on = clamp(min(inward.x, inward.y) / uMmPerPx + 0.5, 0.0, 1.0);
  vec3 metal = on > 0.0 ? metalColour(p) : vec3(0.0);
  vec3 bench = on < 1.0 ? benchColour(p) : vec3(0.0);
  colour = vec4(toScreenColour(mix(bench, metal, on) * uExposure), 1.0);
}`;

/** Source of the fragment shader at a quality. */
export function fragmentShader({ steps, growth, isFine }: Quality): string {
  const choices = `
#define STEPS ${steps}
#define GROWTH ${growth.toFixed(3)}
#define FINE ${isFine}
`;
  return [HEAD, choices, SURFACE, DETAIL, SHADOW, LIGHT, BENCH].join("");
}
