// Leaves and petals: blades along a midrib, round fans, and compounds of them.
#pragma once
#include "mesh.h"

struct LeafKind {
  int form = 0; // 0 blade, 1 round or lobed fan, 2 feather (leaflets along a rib), 3 hand (leaflets from one
                // point), 4 needle tuft, 5 thick
  float size = 0.5f;       // length in rim radii
  float slim = 0.45f;      // half-width over length
  float widest = 0.4f;     // where along the blade
  float tip = 1, base = 1; // bluntness of the ends
  float teeth = 0;
  int toothCount = 8;
  int lobes = 5;
  float lobeDepth = 0.2f, notch = 0.3f;
  float bend = 0.4f, fold = 0.3f, wave = 0.05f;
  float petiole = 0.3f;
  int leaflets = 7;
  int surface = 0, stem = 0;
};

inline float bladeWidth(const LeafKind &k, float t) {
  float w = t < k.widest ? std::pow(t / k.widest, 0.45f / k.base)
                         : std::pow(std::max(0.0f, 1 - (t - k.widest) / (1 - k.widest)), 0.75f / k.tip);
  if (k.teeth > 0) w *= 1 - k.teeth * std::fabs(2 * fract(t * k.toothCount) - 1);
  return w;
}

/** One blade from `at` along `d`, its face towards `up`. Drops as it goes, by `k.bend` radians over its
 * length. */
inline void addBlade(Mesh &m, Random &r, const LeafKind &k, int s, Vec at, Vec d, Vec up, float size,
                     int steps, float tint) {
  size_t v0 = m.vertices.size(), t0 = m.triangles.size();
  d = unit(d);
  Vec side = cross(d, up);
  side = length(side) > 1e-3f ? unit(side) : anySide(d);
  float bend = k.bend * r.in(0.4f, 1.5f), step = size / steps, phase = r.in(0, 6.28f),
        twist = r.normal() * 0.12f;
  if (k.teeth > 0) steps = std::max(steps, std::min(36, k.toothCount * 2)), step = size / steps;
  Vec p = at;
  for (int i = 0; i <= steps; i++) {
    float t = float(i) / steps, w = std::max(bladeWidth(k, t) * k.slim * size, 0.004f * size);
    Vec n = cross(side, d);
    float rise = k.fold * w, ripple = std::sin(phase + t * 14) * k.wave * size;
    m.add(p - side * w + n * (rise + ripple), t, -1, tint);
    m.add(p, t, 0, tint);
    m.add(p + side * w + n * (rise - ripple), t, 1, tint);
    if (i) {
      int q = int(v0) + i * 3;
      for (int h = 0; h < 2; h++) {
        m.add(q + h, q + h - 3, q + h + 1, s);
        m.add(q + h + 1, q + h - 3, q + h - 2, s);
      }
    }
    // turn downwards about the side, as far as it is not hanging yet
    float fallen = bend / steps;
    Vec next = turned(d, side, -fallen);
    if (next.y > -0.98f) d = unit(next);
    side = turned(side, d, twist / steps);
    p = p + d * step;
  }
  m.shadeSmooth(v0, t0);
}

/** A round, lobed or heart-shaped leaf spread around the point where its stalk joins. */
inline void addFan(Mesh &m, Random &r, const LeafKind &k, int s, Vec at, Vec d, Vec up, float size,
                   float tint) {
  size_t v0 = m.vertices.size(), t0 = m.triangles.size();
  Vec n = unit(up);
  d = unit(d - n * dot(d, n));
  Vec side = cross(d, n);
  int steps = std::max(18, k.lobes * 5);
  float cup = k.fold * r.in(-0.3f, 1), phase = r.in(0, 6.28f);
  int centre = m.add(at, 0, 0, tint);
  for (int i = 0; i <= steps; i++) {
    float a = 6.2831853f * (float(i) / steps - 0.5f), c = std::fabs(a) / 3.14159f;
    float q = 1 - k.lobeDepth * (0.5f - 0.5f * std::cos(a * k.lobes + 3.14159f * (k.lobes % 2 == 0)));
    q *= 1 - k.notch * smooth(0.8f, 1.0f, c);
    q *= mix(1.0f, 0.8f, c * k.tip) * (1 - k.teeth * 0.5f * std::fabs(2 * fract(a * k.toothCount) - 1));
    float big = size * 0.6f * q;
    for (int ring = 1; ring <= 2; ring++) {
      float f = ring == 1 ? 0.55f : 1.0f;
      Vec flat = d * (std::cos(a) * big * f) + side * (std::sin(a) * big * f * (0.8f + k.slim * 0.4f));
      Vec lift = n * (cup * f * f * big + k.wave * 1.6f * size * f * f * std::sin(a * (k.lobes + 2) + phase));
      Vec drop = Vec{0, -1, 0} * (k.bend * 0.25f * f * f * size * std::max(0.0f, std::cos(a)));
      m.add(at + flat + lift + drop, f * q, a, tint);
    }
    if (i) {
      int w = centre + 1 + i * 2;
      m.add(centre, w - 2, w, s);
      m.add(w, w - 2, w - 1, s);
      m.add(w, w - 1, w + 1, s);
    }
  }
  m.shadeSmooth(v0, t0);
}

/** One leaf of any kind with its stalk, from the node `at`, growing along `d`. */
inline void addLeaf(Mesh &m, Random &r, const LeafKind &k, Vec at, Vec d, float scale, float detail) {
  if (m.triangles.size() > m.budget) return;
  float size = k.size * scale * r.in(0.8f, 1.15f), tint = r.unit01(),
        stalk = k.petiole * size * r.in(0.6f, 1.4f);
  d = unit(d);
  Vec out = unit(d + r.direction() * 0.2f), tipAt = at + out * stalk;
  if (stalk > 0.05f * size) {
    auto path = bentPath(at, at + unit(out + Vec{0, 0.5f, 0}) * (stalk * 0.6f), tipAt, 3);
    float w = std::max(0.011f, 0.022f * size);
    addTube(m, k.stem, path, {w * 1.2f, w, w, w * 0.8f}, 4, tint);
  }
  Vec up = unit(Vec{0, 1, 0} + out * 0.35f + r.direction() * 0.45f);
  int steps = detail > 0.6f ? 7 : 5;
  switch (k.form) {
  case 1: {
    Vec face = unit(up + out * r.in(0.1f, 1.3f));
    addFan(m, r, k, k.surface, tipAt, out + Vec{0, -0.3f, 0}, face, size, tint);
    break;
  }
  case 2: {
    int n = k.leaflets;
    float len = size * 1.6f;
    Vec dir = out, p = tipAt;
    LeafKind leaflet = k;
    leaflet.petiole = 0;
    Vec side = cross(dir, Vec{0, 1, 0});
    side = length(side) > 1e-3f ? unit(side) : anySide(dir);
    std::vector<Vec> rib{p};
    float bend = k.bend * r.in(0.6f, 1.4f) * 1.2f;
    for (int i = 0; i < n; i++) {
      p = p + dir * (len / n);
      rib.push_back(p);
      float t = (i + 0.7f) / n, small = std::sin(3.14159f * mix(0.25f, 0.93f, t)) * 0.75f + 0.2f;
      for (float h : {-1.0f, 1.0f})
        addBlade(m, r, leaflet, k.surface, p, side * h + dir * mix(0.5f, 1.0f, t) + Vec{0, 0.15f, 0},
                 cross(side, dir), size * small * 4.2f / (n + 3.0f), n > 12 ? 3 : 5,
                 tint * 0.8f + r.unit01() * 0.2f);
      Vec next = turned(dir, side, -bend / n);
      if (next.y > -0.97f) dir = next;
    }
    addBlade(m, r, leaflet, k.surface, p, dir, cross(side, dir), size * 2.4f / (n + 3.0f), 4, tint);
    std::vector<float> w(rib.size());
    for (size_t i = 0; i < w.size(); i++) w[i] = mix(0.03f, 0.008f, float(i) / w.size()) * size;
    addTube(m, k.stem, rib, w, 4, tint);
    break;
  }
  case 3: {
    Vec axis = unit(out + up * 0.7f), side = anySide(axis);
    LeafKind leaflet = k;
    leaflet.petiole = 0;
    for (int i = 0; i < k.leaflets; i++) {
      Vec q = turned(side, axis, 6.2831853f * i / k.leaflets);
      addBlade(m, r, leaflet, k.surface, tipAt, q + axis * r.in(0.0f, 0.35f), axis, size * r.in(0.75f, 1),
               steps, tint * 0.8f + 0.2f * r.unit01());
    }
    break;
  }
  case 4: {
    LeafKind needle = k;
    needle.fold = 0;
    needle.wave = 0;
    for (int i = 0; i < k.leaflets; i++)
      addBlade(m, r, needle, k.surface, tipAt, unit(out * r.in(0.2f, 1.1f) + r.direction()), r.direction(),
               size * r.in(0.6f, 1), 2, r.unit01());
    break;
  }
  case 5:
    addBlob(m, k.surface, tipAt + out * (size * 0.5f), {k.slim * size, size * 0.55f, k.slim * size * 0.55f},
            out, 8, tint);
    break;
  default: addBlade(m, r, k, k.surface, tipAt, out, up, size, steps, tint);
  }
}
