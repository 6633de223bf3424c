// What a surface looks like at one point: colour and bump from its patterns.
#pragma once
#include "draw.h"

struct Painted {
  Vec colour, n;
  float gloss;
};

inline float line(float v, float width) {
  float d = std::fabs(fract(v + 0.5f) - 0.5f);
  return 1 - smooth(width * 0.5f, width, d);
}
inline float speck(float u, float v, float share) {
  return smooth(share + 0.12f, share, 1 - grainy().at(u, v));
}

inline Vec leafColour(const Point &q) {
  const Surface &s = *q.s;
  float u = q.u, v = q.v, a = std::fabs(v),
        blot = cloudy().at(u * 0.5f + q.tint * 17, v * 0.25f + q.tint * 5);
  bool fan = s.look == Look::Fan;
  if (fan) {
    a = q.u;
    v = q.v * 0.5f;
  }
  Vec c = s.colour * (0.78f + 0.44f * blot);
  float other = 0, edge = 0.12f * (blot - 0.5f);
  switch (s.pattern) {
  case 1:
    other = smooth(0.62f - s.amount * 0.3f, 0.8f - s.amount * 0.25f, a + edge * 2.5f);
    break; // pale margin
  case 2:
    other = 1 - smooth(0.1f + s.amount * 0.3f, 0.3f + s.amount * 0.3f, a + edge * 2.5f);
    break; // pale middle
  case 3:
    other = smooth(0.62f - 0.3f * s.amount, 0.68f - 0.3f * s.amount,
                   cloudy().at(u * 0.7f + q.tint * 3, v * 0.4f));
    break;                                                                             // splashed
  case 4: other = line(u * (6 + 10 * s.amount) + 0.5f * blot, 0.3f) * 0.8f; break;     // cross bands
  case 5: other = speck(u * 1.3f + q.tint, v * 0.6f, 0.25f + 0.15f * s.amount); break; // spotted
  case 6:
    other = (1 - smooth(0.08f, 0.2f, std::fabs(a - 0.6f + edge))) * 0.6f;
    c = mix(c, s.colour * 0.3f, other);
    other = 0;
    break; // dark zone
  case 7:
    other = smooth(0.35f, 0.6f, line(u * s.veinCount - a * 2.2f, 0.5f) * 0.5f + blot * 0.5f) * s.amount;
    break; // painted between the veins
  default: break;
  }
  c = mix(c, s.second, other);
  if (s.veins > 0) {
    float vein = fan ? line(v * s.veinCount / 3.14159f, 0.09f) * smooth(0, 0.2f, u)
                     : std::max(1 - smooth(0.03f, 0.09f, a), 0.6f * line(u * s.veinCount - a * 1.6f, 0.16f));
    c = mix(c, s.third, vein * s.veins * 0.7f);
  }
  if (q.tint > 0.93f) c = mix(c, Vec{0.45f, 0.42f, 0.05f}, (q.tint - 0.93f) * 6);   // an ageing leaf
  if (q.tint < 0.03f) c = mix(c, Vec{0.16f, 0.08f, 0.03f}, smooth(0.55f, 0.9f, u)); // a brown tip
  return c * (0.7f + 0.55f * fract(q.tint * 7.3f));
}

inline Vec wareColourAt(const Point &q) {
  const Surface &s = *q.s;
  float grain = grainy().at(q.u * 2, q.p.y * 0.3f), cloud = cloudy().at(q.u, q.p.y * 0.2f), k = 0;
  switch (s.pattern) {
  case 1: k = smooth(0.35f, 0.4f, std::fabs(fract(q.p.y * s.veinCount * 0.2f) - 0.5f)); break; // hoops
  case 2: k = line(q.u * s.veinCount, 0.25f); break;                                    // upright stripes
  case 3: k = smooth(0.5f, 0.75f, cloud * s.amount + 0.3f); break;                      // weather, lime
  case 4: k = speck(q.u * 3, q.p.y * 0.5f, 0.22f); break;                               // speckle
  case 5: k = smooth(-0.9f - s.amount, -0.85f - s.amount + 0.1f * cloud, q.p.y); break; // two-colour dip
  case 6: {
    float a = fract(q.u * s.veinCount) - 0.5f, b = fract(q.p.y * s.veinCount * 0.16f) - 0.5f;
    k = 1 - smooth(0.06f, 0.09f, a * a + b * b);
    break;
  } // dots
  case 7:
    k = smooth(0.45f, 0.55f, fract(q.u * s.veinCount * 0.5f + std::fabs(fract(q.p.y * 1.5f) - 0.5f)));
    break;                                                                               // zigzag
  case 8: k = clamp01(-q.p.y * 0.5f * s.amount); break;                                  // shaded glaze
  case 9: k = smooth(0.55f, 0.6f, cloudy().at(q.u * 2.3f + 0.3f, q.p.y * 0.55f)); break; // painted flowers
  default: break;
  }
  return mix(s.colour, s.second, k) * (1 - s.roughness * 0.5f * grain) * (0.9f + 0.2f * cloud);
}

inline Painted paint(const Point &q, Vec eye) {
  const Surface &s = *q.s;
  Painted o{s.colour, q.n, s.gloss};
  float bump = 0, bumpV = 0;
  switch (s.look) {
  case Look::Blade:
  case Look::Fan: {
    o.colour = leafColour(q);
    float b = grainy().at(q.u * 0.8f + q.tint, q.v * 0.4f) - 0.5f;
    bump = b * s.roughness * 0.6f;
    bumpV = (cloudy().at(q.u * 1.7f, q.v + q.tint) - 0.5f) * s.roughness;
    break;
  }
  case Look::Petal: {
    float a = std::fabs(q.v);
    o.colour = s.colour * (0.8f + 0.4f * cloudy().at(q.u * 0.5f + q.tint * 9, q.v * 0.3f));
    float k = 0;
    if (s.pattern == 1) k = 1 - smooth(0.15f, 0.5f, q.u);
    if (s.pattern == 2) k = smooth(0.55f, 0.95f, std::max(a, q.u));
    if (s.pattern == 3) k = 1 - smooth(0.1f, 0.3f, std::fabs(q.u - 0.5f) + 0.3f * a);
    if (s.pattern == 4) k = line(q.v * 3, 0.2f) * (1 - q.u);
    o.colour = mix(o.colour, s.second, k * s.amount * 0.9f) * (0.8f + 0.4f * q.tint);
    break;
  }
  case Look::Bark: {
    float k = s.pattern == 0   ? grainy().at(q.u * 0.4f + q.tint, q.v * 1.2f)
              : s.pattern == 1 ? line(q.u * 14 + 0.3f * cloudy().at(q.u * 2, q.v), 0.25f)
                               : cloudy().at(q.u * 2, q.v * 2 + q.tint);
    o.colour = mix(s.colour, s.second, k * s.amount);
    bump = (grainy().at(q.u * 0.7f, q.v * 1.5f) - 0.5f) * s.roughness * 1.5f;
    break;
  }
  case Look::Stem:
    o.colour = mix(s.colour, s.second, cloudy().at(q.u * 2 + q.tint * 3, q.v)) * (0.8f + 0.4f * q.tint);
    break;
  case Look::Ware:
    o.colour = wareColourAt(q);
    bump = (grainy().at(q.u * 3, q.p.y * 0.7f) - 0.5f) * s.roughness * 0.5f;
    break;
  case Look::Soil: {
    float k = grainy().at(q.p.x * 0.45f, q.p.z * 0.45f), k2 = grainy().at(q.p.x * 1.1f + 0.3f, q.p.z * 1.1f);
    o.colour = mix(s.second, s.colour, k) * (0.5f + k2);
    if (k2 > 0.8f && s.pattern == 1) o.colour = Vec{0.7f, 0.68f, 0.62f};
    bump = (k - 0.5f) * 1.6f;
    bumpV = (k2 - 0.5f) * 1.6f;
    break;
  }
  case Look::Wicker: {
    float a = q.u * s.veinCount, b = q.p.y * s.veinCount * 0.28f;
    int odd = (int(std::floor(a)) + int(std::floor(b))) & 1;
    float w = std::sin(fract(b) * 3.14159f) * (odd ? std::sin(fract(a) * 3.14159f) : 0.75f);
    o.colour = mix(s.second, s.colour, w) * (0.75f + 0.5f * grainy().at(q.u * 3, q.p.y));
    bump = std::cos(fract(a) * 3.14159f) * 0.6f;
    bumpV = std::cos(fract(b) * 3.14159f) * 0.6f;
    break;
  }
  case Look::Cactus: {
    float w = std::cos(q.v * 6.2831853f * s.pattern);
    o.colour = mix(s.colour * 0.45f, mix(s.colour, s.third, 0.3f), smooth(-1, 1, w)) *
               (0.8f + 0.4f * cloudy().at(q.u, q.v * 4));
    o.n = unit(q.n + cross(q.n, Vec{0, 1, 0}) * (std::sin(q.v * 6.2831853f * s.pattern) * 0.7f));
    break;
  }
  case Look::Plain:
    o.colour = s.colour * (0.9f + 0.2f * cloudy().at(q.p.x * 0.3f + q.p.z * 0.2f, q.p.y * 0.3f));
    break;
  }
  if (dot(o.n, eye) < 0) o.n = o.n * -1;
  if (bump != 0 || bumpV != 0) {
    Vec side = anySide(o.n);
    o.n = unit(o.n + side * bump + cross(o.n, side) * bumpV);
  }
  return o;
}
