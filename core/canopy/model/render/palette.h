// Colours of leaves, stems and petals, chosen in the way they look (sRGB) and handed on as light (linear).
#pragma once
#include "leaf.h"

inline Vec leafGreen(Random &r) {
  float q = r.unit01();
  if (q < 0.70f) return fromHsv(r.in(0.19f, 0.38f), r.in(0.25f, 0.85f), r.in(0.24f, 0.86f)); // green
  if (q < 0.78f)
    return fromHsv(r.in(0.30f, 0.48f), r.in(0.08f, 0.35f), r.in(0.35f, 0.85f));          // grey, silver, blue
  if (q < 0.86f) return fromHsv(r.in(0.13f, 0.2f), r.in(0.4f, 0.9f), r.in(0.45f, 0.9f)); // yellow
  if (q < 0.93f)
    return fromHsv(r.in(0.85f, 1.06f), r.in(0.25f, 0.8f), r.in(0.1f, 0.5f)); // bronze, purple, red
  return fromHsv(r.in(0.15f, 0.4f), r.in(0.2f, 0.7f), r.in(0.07f, 0.2f));    // near black
}
inline Vec petalColour(Random &r) {
  float q = r.unit01();
  if (q < 0.24f) return fromHsv(r.in(0.0f, 1.0f), r.in(0.0f, 0.1f), r.in(0.85f, 1.0f));    // white, blush
  if (q < 0.45f) return fromHsv(r.in(0.94f, 1.02f), r.in(0.7f, 1.0f), r.in(0.45f, 0.98f)); // red
  if (q < 0.68f) return fromHsv(r.in(0.86f, 0.98f), r.in(0.2f, 0.8f), r.in(0.6f, 1.0f));   // pink
  if (q < 0.78f) return fromHsv(r.in(0.74f, 0.88f), r.in(0.2f, 0.8f), r.in(0.3f, 0.9f));   // purple
  if (q < 0.90f) return fromHsv(r.in(0.1f, 0.17f), r.in(0.3f, 1.0f), r.in(0.8f, 1.0f));    // yellow, cream
  if (q < 0.96f) return fromHsv(r.in(0.02f, 0.1f), r.in(0.5f, 1.0f), r.in(0.8f, 1.0f));    // orange, salmon
  return fromHsv(r.in(0.58f, 0.72f), r.in(0.2f, 0.8f), r.in(0.5f, 0.95f));                 // blue
}
inline Surface leafSurface(Random &r, Vec green) {
  Surface s;
  s.label = Foliage;
  s.look = Look::Blade;
  s.colour = linear(green);
  s.second = linear(r.chance(0.6f)   ? fromHsv(r.in(0.12f, 0.25f), r.in(0.0f, 0.5f), r.in(0.7f, 1.0f))
                    : r.chance(0.5f) ? fromHsv(r.in(0.85f, 1.0f), r.in(0.3f, 0.8f), r.in(0.3f, 0.9f))
                                     : leafGreen(r));
  s.third = linear(mix(green, Vec{0.85f, 0.95f, 0.6f}, r.in(0.0f, 0.5f)));
  s.gloss = r.chance(0.5f) ? r.in(0.0f, 0.15f) : r.in(0.15f, 0.9f);
  s.sharpness = r.logIn(6, 80);
  s.letsThrough = r.in(0.05f, 0.5f);
  if (r.chance(0.42f)) {
    s.pattern = r.intIn(1, 7);
    s.amount = r.in(0.3f, 1);
  }
  s.veins = r.chance(0.75f) ? r.in(0.1f, 0.9f) : 0;
  s.veinCount = r.in(4, 14);
  s.roughness = r.in(0, 0.6f);
  return s;
}
inline Surface stemSurface(Random &r, Vec green) {
  Surface s;
  s.label = Foliage;
  s.look = Look::Stem;
  s.gloss = r.in(0.05f, 0.3f);
  float q = r.unit01();
  s.colour = linear(q < 0.5f    ? mix(green, Vec{0.55f, 0.65f, 0.3f}, r.in(0.2f, 0.8f))
                    : q < 0.75f ? fromHsv(r.in(0.03f, 0.11f), r.in(0.2f, 0.6f), r.in(0.2f, 0.6f))
                                : fromHsv(r.in(0.92f, 1.03f), r.in(0.3f, 0.7f), r.in(0.15f, 0.5f)));
  s.second = s.colour * r.in(0.5f, 1.5f);
  return s;
}
inline Surface barkSurface(Random &r) {
  Surface s;
  s.label = Foliage;
  s.look = Look::Bark;
  s.gloss = 0.05f;
  s.colour = linear(fromHsv(r.in(0.02f, 0.14f), r.in(0.05f, 0.55f), r.in(0.12f, 0.65f)));
  s.second = s.colour * r.in(0.2f, 0.6f);
  s.pattern = r.pick(3);
  s.amount = r.in(0.4f, 1);
  s.roughness = r.in(0.3f, 1);
  return s;
}

/** A leaf form at random; `big` plants carry leaves that are small against the plant. */
inline LeafKind someLeaf(Mesh &m, Random &r, float size, int form = -1) {
  LeafKind k;
  k.size = size;
  float q = r.unit01();
  k.form = form >= 0   ? form
           : q < 0.42f ? 0
           : q < 0.76f ? 1
           : q < 0.84f ? 2
           : q < 0.9f  ? 3
           : q < 0.95f ? 4
                       : 5;
  Vec green = leafGreen(r);
  Surface s = leafSurface(r, green);
  k.slim = r.in(0.12f, 0.5f);
  k.widest = r.in(0.2f, 0.65f);
  k.tip = r.in(0.5f, 1.6f);
  k.base = r.in(0.6f, 1.6f);
  k.bend = r.in(0.0f, 1.4f);
  k.fold = r.in(-0.1f, 0.6f);
  k.wave = r.chance(0.4f) ? r.in(0.01f, 0.08f) : 0.005f;
  k.petiole = r.chance(0.3f) ? 0 : r.in(0.1f, 1.0f);
  if (r.chance(0.3f)) {
    k.teeth = r.in(0.1f, 0.5f);
    k.toothCount = r.intIn(4, 12);
  }
  if (k.form == 1) {
    s.look = Look::Fan;
    k.lobes = r.intIn(3, 9);
    k.lobeDepth = r.chance(0.5f) ? r.in(0.02f, 0.2f) : r.in(0.2f, 0.6f);
    k.notch = r.in(0, 0.9f);
    k.tip = r.in(0, 1);
    k.slim = r.in(0.2f, 0.9f);
    k.petiole = r.in(0.4f, 1.6f);
    k.fold = r.in(-0.2f, 0.5f);
    if (k.teeth > 0) k.toothCount = r.intIn(12, 30);
  }
  if (k.form == 2) {
    k.leaflets = r.chance(0.5f) ? r.intIn(3, 7) : r.intIn(8, 22);
    k.slim = r.in(0.12f, 0.4f);
    k.teeth = 0;
  }
  if (k.form == 3) {
    k.leaflets = r.intIn(3, 9);
    k.slim = r.in(0.12f, 0.35f);
    k.petiole = r.in(0.3f, 1.3f);
    k.teeth = 0;
  }
  if (k.form == 4) {
    k.leaflets = r.intIn(8, 20);
    k.slim = r.in(0.02f, 0.08f);
    k.bend = 0.1f;
    k.teeth = 0;
    k.petiole = 0;
  }
  if (k.form == 5) {
    k.slim = r.in(0.25f, 0.5f);
    s.veins = 0;
    s.letsThrough = 0.05f;
    k.petiole = 0;
  }
  k.surface = m.add(s);
  k.stem = m.add(stemSurface(r, green));
  return k;
}
