// Things that stand about: what lies on tables and shelves, windows, curtains, fences, stones, grass.
#pragma once
#include "dressing.h"

/** Things for tables and shelves that are no pot plant: bottles, bowls, books, balls. */
inline void addThing(Mesh &m, Random &r, float size) {
  Surface s = wareSurface(r, Background);
  if (r.chance(0.3f)) s.colour = linear(fromHsv(r.in(0, 1), r.in(0, 1), r.in(0.05f, 1)));
  int q = m.add(s);
  int kind = r.pick(5);
  if (kind == 0)
    addBox(m, q, {-size * r.in(0.2f, 0.9f), 0, -size * 0.5f},
           {size * r.in(0.2f, 0.9f), size * r.in(0.3f, 2), size * 0.5f}, 0.5f);
  else if (kind == 1)
    addBlob(m, q, {0, size * 0.5f, 0}, {size * 0.5f, size * 0.5f, size * 0.5f}, {0, 1, 0}, 20, 0.5f);
  else if (kind == 2)
    for (int i = 0; i < 4; i++) {
      Surface b = s;
      b.colour = linear(fromHsv(r.in(0, 1), r.in(0, 0.8f), r.in(0.1f, 1)));
      float w = r.in(0.08f, 0.25f) * size;
      size_t v0 = m.vertices.size();
      addBox(m, m.add(b), {0, 0, -size * 0.4f}, {w, size * r.in(0.9f, 1.5f), size * 0.4f}, 0.5f);
      m.move(v0, {(i - 2) * 0.26f * size, 0, 0}, 1, 0);
    }
  else {
    std::vector<Vec> p{{0, 0, 0}};
    float h = size * r.in(0.5f, 2.2f);
    for (int i = 0; i <= 6; i++) p.push_back({size * r.in(0.2f, 0.6f), h * i / 6, 0});
    p.push_back({p.back().x * 0.8f, h * 0.9f, 0});
    addWare(m, q, p, 0, 6, 0, {1, 1, 1});
  }
}

/** A window, picture or mirror flat on the wall at `z`, at times with glazing bars. */
inline void addPane(Mesh &m, Random &r, float reach, float z) {
  Surface frame;
  frame.colour = linear(fromHsv(r.in(0, 1), r.in(0, 0.6f), r.in(0, 1)));
  Surface pane = frame;
  pane.colour = r.chance(0.5f) ? Vec{1, 1, 1} * r.in(0.5f, 3) : linear(petalColour(r));
  float x = r.in(-2.5f, 2.5f) * reach, y = r.in(-0.5f, 1.6f) * reach, w = r.in(0.2f, 1) * reach,
        h = r.in(0.2f, 1.3f) * reach, b = r.in(0.02f, 0.09f) * reach;
  int f = m.add(frame);
  addBox(m, f, {x - w, y - h, z}, {x + w, y + h, z + 0.1f}, 0.5f);
  addBox(m, m.add(pane), {x - w + b, y - h + b, z}, {x + w - b, y + h - b, z + 0.12f}, 0.5f);
  if (r.chance(0.5f)) {
    for (int i = r.intIn(1, 3), n = i; i > 0; i--) {
      float at = mix(x - w, x + w, i / (n + 1.0f));
      addBox(m, f, {at - b / 2, y - h, z}, {at + b / 2, y + h, z + 0.16f}, 0.5f);
    }
    addBox(m, f, {x - w, y - b / 2, z}, {x + w, y + b / 2, z + 0.16f}, 0.5f);
  }
}
/** A curtain's folds, or a corrugated wall. */
inline void addCurtain(Mesh &m, Random &r, float reach, float z, float floorY) {
  Surface cloth;
  cloth.colour = linear(fromHsv(r.in(0, 1), r.in(0, 0.5f), r.in(0.2f, 1)));
  cloth.letsThrough = r.in(0, 0.5f);
  int q = m.add(cloth), n = 60;
  float x = r.in(-2.5f, 2.5f) * reach, w = r.in(0.3f, 1.5f) * reach, folds = r.in(3, 16),
        deep = r.in(0.02f, 0.08f) * reach;
  size_t v0 = m.vertices.size(), t0 = m.triangles.size();
  for (int i = 0; i <= n; i++) {
    float t = float(i) / n;
    Vec p{x + w * (2 * t - 1), floorY, z + 0.2f + deep * (1 + std::sin(t * folds * 6.2831853f))};
    m.add(p, t, 0, 0.5f);
    m.add(p + Vec{0, 6 * reach, 0}, t, 1, 0.5f);
    if (i) {
      int k = int(v0) + 2 * i;
      m.add(k, k - 2, k + 1, q);
      m.add(k + 1, k - 2, k - 1, q);
    }
  }
  m.shadeSmooth(v0, t0);
}
/** Boards on the wall with things on them. */
inline void addShelves(Mesh &m, Random &r, float reach, float z, float floorY) {
  int board = m.add(wareSurface(r, Background));
  float x = r.in(-1.5f, 1.5f) * reach, w = r.in(0.5f, 2) * reach, deep = r.in(0.2f, 0.6f) * reach,
        gap = r.in(0.5f, 1.2f) * reach, y = floorY + r.in(0, 1) * gap;
  for (int i = r.intIn(1, 4); i > 0; i--, y += gap) {
    addBox(m, board, {x - w, y, z}, {x + w, y + 0.05f * reach, z + deep}, 0.5f);
    for (int k = r.intIn(0, 6); k > 0; k--) {
      size_t v0 = m.vertices.size();
      addThing(m, r, gap * r.in(0.15f, 0.5f));
      m.move(v0, {x + r.in(-0.9f, 0.9f) * w, y + 0.05f * reach, z + deep * 0.5f}, 1, 0);
    }
  }
}
/** Slats, upright or lying, with gaps: fences, trellises, blinds, chair backs. */
inline void addFence(Mesh &m, Random &r, float reach, float z, float floorY) {
  int slat = m.add(wareSurface(r, Background));
  bool upright = r.chance(0.6f);
  float each = r.in(0.08f, 0.5f) * reach, share = r.in(0.15f, 0.92f), half = r.in(0.5f, 4) * reach,
        x = r.in(-1, 1) * reach, top = floorY + r.in(0.5f, 4) * reach;
  if (upright)
    for (float at = x - half; at < x + half; at += each)
      addBox(m, slat, {at, floorY, z}, {at + each * share, top + 0.05f * reach * r.normal(), z + 0.1f}, 0.5f);
  else
    for (float at = floorY; at < top; at += each)
      addBox(m, slat, {x - half, at, z}, {x + half, at + each * share, z + 0.1f}, 0.5f);
}
/** Stones, logs and clods about the floor. */
inline void addRubble(Mesh &m, Random &r, float reach, float floorY) {
  int kinds[3];
  for (int &k : kinds) {
    Surface s = barkSurface(r);
    s.label = Background;
    if (r.chance(0.5f)) s.colour = linear(fromHsv(r.in(0, 1), r.in(0, 0.2f), r.in(0.15f, 0.95f)));
    s.second = s.colour * r.in(0.2f, 0.8f);
    k = m.add(s);
  }
  float size = r.logIn(0.08f, 0.7f);
  for (int i = std::min(160, int(8 / size)); i > 0; i--) {
    float w = size * r.logIn(0.5f, 1.6f);
    addBlob(m, kinds[r.pick(3)], {r.in(-2.5f, 2.5f) * reach, floorY + w * 0.2f, r.in(-2.5f, 0.9f) * reach},
            Vec{r.in(0.6f, 1.4f), r.in(0.4f, 1), r.in(0.6f, 1.4f)} * w,
            unit(Vec{0, 1, 0} + r.direction() * 0.5f), 7, r.unit01());
  }
}
/** Blades of grass or low weeds about the floor. */
inline void addGrass(Mesh &m, Random &r, float reach, float floorY) {
  Surface s = leafSurface(r, leafGreen(r));
  s.label = Background;
  LeafKind k;
  k.slim = r.logIn(0.02f, 0.3f);
  k.bend = r.in(0, 1);
  int q = m.add(s);
  float size = r.logIn(0.1f, 0.6f) * reach;
  for (int i = r.intIn(100, 900); i > 0; i--) {
    Vec at{r.in(-2.5f, 2.5f) * reach, floorY, r.in(-2.5f, 0.6f) * reach};
    addBlade(m, r, k, q, at, Vec{0, 1, 0} + r.direction() * 0.6f, r.direction(), size * r.in(0.4f, 1.2f), 3,
             r.unit01());
  }
}
/** What the pot stands on: a block, a slice of a trunk, a stool, a mat. Its top is at `floorY`; returns its
 * height. */
inline float addFooting(Mesh &m, Random &r, float floorY) {
  Surface s = r.chance(0.5f) ? wareSurface(r, Background) : barkSurface(r);
  s.label = Background;
  float w = r.in(0.9f, 2.2f), h = r.chance(0.5f) ? r.in(0.02f, 0.3f) : r.in(0.3f, 2);
  addWare(m, m.add(s),
          {{w * r.in(0.8f, 1.05f), floorY - h, 0}, {w, floorY - 0.03f, 0}, {0, floorY - 0.01f, 0}},
          r.chance(0.5f) ? 0.0f : r.in(0.5f, 1), r.intIn(3, 9), r.chance(0.3f) ? 0.05f : 0, {1, 1, 1});
  return h;
}
