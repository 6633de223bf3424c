// Flowers of many builds; each is made of petals (blades) around a middle.
#pragma once
#include "palette.h"

struct FlowerKind {
  int form = 0; // 0 open, 1 head of many small, 2 daisy, 3 double ball, 4 hanging bell, 5 trumpet, 6 spike, 7
                // spathe, 8 berries
  float size = 0.3f;
  int petals = 5;
  int florets = 12;
  LeafKind petal, corolla;
  int middle = 0, stem = 0;
};

inline FlowerKind someFlower(Mesh &m, Random &r, float size) {
  FlowerKind k;
  float q = r.unit01();
  k.form = q < 0.18f   ? 0
           : q < 0.46f ? 1
           : q < 0.56f ? 2
           : q < 0.66f ? 3
           : q < 0.78f ? 4
           : q < 0.84f ? 5
           : q < 0.92f ? 6
           : q < 0.95f ? 7
                       : 8;
  k.size = size;
  k.petals = k.form == 2 ? r.intIn(10, 22) : r.intIn(4, 6);
  k.florets = r.intIn(7, 26);
  Surface s;
  s.label = Flower;
  s.look = Look::Petal;
  s.colour = linear(petalColour(r));
  s.second = r.chance(0.5f) ? s.colour * r.in(0.1f, 0.6f) : linear(petalColour(r));
  s.third = linear(petalColour(r));
  s.pattern = r.pick(5);
  s.amount = r.in(0.2f, 1);
  s.letsThrough = r.in(0.15f, 0.55f);
  s.gloss = r.in(0, 0.25f);
  s.sharpness = r.logIn(6, 40);
  s.veins = r.chance(0.5f) ? r.in(0, 0.5f) : 0;
  k.petal.surface = m.add(s);
  k.petal.slim = k.form == 2 ? r.in(0.1f, 0.25f) : r.in(0.3f, 0.6f);
  k.petal.widest = r.in(0.5f, 0.8f);
  k.petal.tip = r.in(0.9f, 2);
  k.petal.base = r.in(0.5f, 0.9f);
  k.petal.bend = r.in(-0.6f, 0.9f);
  k.petal.fold = r.in(-0.3f, 0.4f);
  k.petal.wave = r.chance(0.5f) ? r.in(0.02f, 0.12f) : 0.01f;
  k.corolla = k.petal;
  Surface c = s;
  if (r.chance(0.7f)) c.colour = linear(petalColour(r));
  k.corolla.surface = m.add(c);
  k.corolla.slim = r.in(0.35f, 0.6f);
  Surface mid = s;
  mid.look = Look::Stem;
  mid.colour = linear(r.chance(0.5f) ? fromHsv(r.in(0.1f, 0.17f), 0.8f, r.in(0.5f, 0.95f)) : petalColour(r));
  mid.second = mid.colour * 0.6f;
  k.middle = m.add(mid);
  Surface stalk = stemSurface(r, leafGreen(r));
  k.stem = m.add(stalk);
  return k;
}

inline void addRing(Mesh &m, Random &r, const LeafKind &petal, int n, Vec at, Vec axis, float open,
                    float size, int steps, float tint) {
  Vec side = turned(anySide(axis), axis, r.in(0, 6.28f));
  for (int i = 0; i < n; i++) {
    Vec q = turned(side, axis, 6.2831853f * (i + r.in(-0.1f, 0.1f)) / n);
    addBlade(m, r, petal, petal.surface, at, q * std::sin(open) + axis * std::cos(open),
             axis * std::sin(open) - q * std::cos(open), size * r.in(0.85f, 1.1f), steps, tint);
  }
}

/** One flower at `at`, facing `axis`. */
inline void addFlower(Mesh &m, Random &r, const FlowerKind &k, Vec at, Vec axis, float scale) {
  if (m.triangles.size() > m.budget * 2) return;
  float z = k.size * scale * r.in(0.75f, 1.2f), tint = r.unit01();
  axis = unit(axis);
  switch (k.form) {
  case 0:
  case 2:
    addRing(m, r, k.petal, k.petals, at, axis, r.in(0.9f, 1.6f), z * 0.55f, 4, tint);
    addBlob(m, k.middle, at, {z * 0.12f, z * 0.07f, z * 0.12f}, axis, 6, tint);
    break;
  case 1:
    for (int i = 0; i < k.florets; i++) {
      Vec d = r.direction();
      d = unit(d + axis * std::max(0.0f, 0.35f - dot(d, axis)) * 1.6f + axis * 0.25f);
      Vec p = at + d * (z * 0.5f * r.in(0.75f, 1.05f));
      addStick(m, k.stem, at - axis * (z * 0.2f), p, z * 0.012f, z * 0.012f, 3, 0.5f);
      if (r.chance(0.15f)) addBlob(m, k.petal.surface, p, {z * 0.04f, z * 0.08f, z * 0.04f}, d, 5, tint);
      else
        addRing(m, r, k.petal, k.petals, p, d, r.in(0.9f, 1.5f), z * 0.26f, 3,
                r.unit01() * 0.5f + tint * 0.5f);
    }
    break;
  case 3:
    for (int ring = 0; ring < 4; ring++)
      addRing(m, r, k.petal, 5 + ring * 2, at, axis, 0.25f + 0.38f * ring + r.in(-0.1f, 0.1f),
              z * (0.3f + 0.08f * ring), 4, tint);
    break;
  case 4: {
    Vec d = unit(Vec{0, -1, 0} + axis * 0.4f + r.direction() * 0.25f), p = at + d * (z * 0.5f);
    addTube(m, k.stem, bentPath(at, at + axis * (z * 0.15f), p, 3),
            {z * 0.02f, z * 0.02f, z * 0.02f, z * 0.03f}, 4, 0.5f);
    addTube(m, k.petal.surface, {p, p + d * (z * 0.12f), p + d * (z * 0.25f)},
            {z * 0.045f, z * 0.04f, z * 0.07f}, 6, tint);
    p = p + d * (z * 0.22f);
    LeafKind sepal = k.petal;
    sepal.slim = 0.2f;
    sepal.bend = -0.9f;
    addRing(m, r, sepal, 4, p, d, r.in(0.9f, 2.0f), z * 0.45f, 4, tint);
    addRing(m, r, k.corolla, 4, p, d, 0.3f, z * 0.38f, 4, tint);
    addRing(m, r, k.corolla, 4, p, d, 0.55f, z * 0.34f, 4, 1 - tint);
    for (int i = 0; i < 4; i++)
      addStick(m, k.middle, p, p + unit(d + r.direction() * 0.12f) * (z * r.in(0.5f, 0.8f)), z * 0.008f,
               z * 0.012f, 3, 0.5f);
    break;
  }
  case 5:
    addRing(m, r, k.petal, k.petals, at, axis, 0.35f, z * 0.5f, 4, tint);
    addRing(m, r, k.petal, k.petals, at + axis * (z * 0.3f), axis, 1.3f, z * 0.4f, 4, tint);
    break;
  case 6: {
    int n = k.florets * 2;
    for (int i = 0; i < n; i++) {
      float t = float(i) / n;
      Vec p = at + axis * (z * 1.8f * t);
      Vec d = turned(anySide(axis), axis, i * 2.4f);
      addRing(m, r, k.petal, 4, p + d * (z * 0.12f * (1.1f - t)), unit(d + axis * 0.4f), 1.1f,
              z * 0.2f * (1.15f - t), 2, r.unit01());
    }
    addStick(m, k.stem, at - axis * (z * 0.3f), at + axis * (z * 1.8f), z * 0.03f, z * 0.015f, 4, 0.5f);
    break;
  }
  case 7: {
    LeafKind spathe = k.petal;
    spathe.slim = 0.42f;
    spathe.widest = 0.35f;
    spathe.fold = 0.5f;
    addBlade(m, r, spathe, k.petal.surface, at, axis + r.direction() * 0.4f,
             Vec{0, 1, 0} + r.direction() * 0.7f, z * 1.2f, 6, tint);
    addStick(m, k.middle, at, at + unit(axis + r.direction() * 0.2f) * (z * 0.6f), z * 0.05f, z * 0.03f, 6,
             tint);
    break;
  }
  default:
    for (int i = 0; i < 6; i++)
      addBlob(m, k.petal.surface, at + r.direction() * (z * 0.3f), {z * 0.1f, z * 0.11f, z * 0.1f},
              r.direction(), 6, r.unit01());
  }
}
