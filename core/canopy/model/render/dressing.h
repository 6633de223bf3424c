// What lies and sticks in a pot: soil, gravel, moss, stones; labels, canes and frames.
#pragma once
#include "pot.h"

/** Rocks that lie on the soil or rise from it. */
inline void addStones(Mesh &m, Random &r, const PotShape &pot, float level) {
  Surface rock;
  rock.label = Soil;
  rock.look = Look::Bark;
  rock.pattern = 2;
  rock.amount = r.in(0.3f, 1);
  rock.roughness = r.in(0.4f, 1.2f);
  rock.colour = linear(fromHsv(r.in(0.02f, 0.65f), r.in(0, 0.25f), r.in(0.2f, 0.85f)));
  rock.second = rock.colour * r.in(0.2f, 0.6f);
  int q = m.add(rock);
  for (int i = r.intIn(1, 6); i > 0; i--) {
    float a = r.in(0, 6.28f), w = r.in(0.2f, 0.75f), size = r.logIn(0.12f, 0.7f);
    addBlob(m, q, {w * std::cos(a) * pot.stretch.x, level + size * 0.3f, w * std::sin(a) * pot.stretch.z},
            Vec{r.in(0.6f, 1.3f), r.in(0.5f, 2.2f), r.in(0.6f, 1.2f)} * size,
            unit(Vec{0, 1, 0} + r.direction() * 0.5f), 7, r.unit01());
  }
}
/** A small figure of balls and turned pieces on the soil. */
inline void addOrnament(Mesh &m, Random &r, float level) {
  float size = r.in(0.12f, 0.4f), a = r.in(0.3f, 2.8f);
  Vec at{0.7f * std::cos(a), level, 0.7f * std::sin(a)};
  for (int i = r.intIn(1, 4); i > 0; i--) {
    Surface s = wareSurface(r, Soil);
    float w = size * r.in(0.5f, 1);
    addBlob(m, m.add(s), at + Vec{0, w, 0}, Vec{0.8f, 1, 0.8f} * w, {0, 1, 0}, 10, 0.5f);
    at.y += w * 1.5f;
    size *= 0.75f;
  }
}

/** Soil, gravel or moss on top, at times with stones and an ornament. */
inline void addSoil(Mesh &m, Random &r, const PotShape &pot, float level) {
  Surface s;
  s.label = Soil;
  s.look = Look::Soil;
  s.pattern = r.pick(4);
  s.gloss = 0.03f;
  s.roughness = 1;
  s.colour = linear(s.pattern == 3    ? fromHsv(r.in(0.15f, 0.32f), r.in(0.4f, 0.8f), r.in(0.15f, 0.5f))
                    : r.chance(0.75f) ? fromHsv(r.in(0.03f, 0.1f), r.in(0.2f, 0.6f), r.in(0.07f, 0.35f))
                                      : fromHsv(r.in(0, 1), r.in(0, 0.15f), r.in(0.4f, 0.95f)));
  s.second = s.colour * r.in(0.2f, 0.6f);
  int soil = m.add(s);
  float mound = r.chance(0.1f) ? r.in(0.1f, 0.5f) : 0;
  addWare(m, soil,
          {{0.93f, level - 0.02f, 0},
           {0.7f, level + r.in(-0.03f, 0.06f) + mound * 0.5f, 0},
           {0.35f, level + r.in(-0.02f, 0.09f) + mound * 0.9f, 0},
           {0.0f, level + r.in(0, 0.1f) + mound, 0}},
          pot.corner, 3, 0, pot.stretch);
  if (r.chance(0.11f)) addStones(m, r, pot, level);
  if (r.chance(0.04f)) addOrnament(m, r, level);
  if (s.pattern == 2 || r.chance(0.2f)) {
    Surface g = s;
    g.look = Look::Ware;
    g.pattern = 0;
    g.gloss = r.in(0, 0.4f);
    g.roughness = 0.3f;
    g.colour = linear(wareColour(r));
    g.second = g.colour * 0.6f;
    int q = m.add(g);
    float size = r.in(0.03f, 0.13f);
    int n = std::min(220, int(2.2f / (size * size) * 0.35f));
    for (int i = 0; i < n; i++) {
      float a = r.in(0, 6.28f), w = 0.88f * std::sqrt(r.unit01());
      addBlob(m, q, {w * std::cos(a) * pot.stretch.x, level + size * 0.4f, w * std::sin(a) * pot.stretch.z},
              Vec{r.in(0.6f, 1.2f), r.in(0.5f, 0.9f), r.in(0.6f, 1.2f)} * size,
              unit(Vec{0, 1, 0} + r.direction() * 0.4f), 6, r.unit01());
    }
  }
}

/** A white or coloured card on a foot, standing in the soil. */
inline void addLabel(Mesh &m, Random &r, float level) {
  Surface card;
  card.label = Support;
  card.colour = linear(r.chance(0.6f) ? Vec{0.95f, 0.95f, 0.93f} : wareColour(r));
  card.gloss = 0.2f;
  int q = m.add(card);
  size_t v0 = m.vertices.size();
  float h = r.in(0.3f, 1.1f), w = r.in(0.07f, 0.22f);
  addBox(m, q, {-w, 0, -0.01f}, {w, h, 0.01f}, 0.5f);
  float a = r.in(0.2f, 2.9f);
  m.move(v0, {0.75f * std::cos(a), level - 0.1f, 0.75f * std::sin(a)}, 1, r.in(-0.8f, 0.8f));
}

/** Canes from the soil upwards, at times tied to a frame; `tall` is the plant's height. */
inline void addCanes(Mesh &m, Random &r, float level, float tall) {
  Surface cane;
  cane.label = Support;
  cane.look = Look::Stem;
  cane.colour = linear(r.chance(0.5f) ? fromHsv(r.in(0.08f, 0.14f), 0.5f, r.in(0.4f, 0.8f))
                                      : fromHsv(0.35f, r.in(0, 0.7f), r.in(0.1f, 0.6f)));
  cane.second = cane.colour * 0.7f;
  int q = m.add(cane), n = r.intIn(1, 4);
  for (int i = 0; i < n; i++) {
    float a = r.in(0, 6.28f), w = r.in(0, 0.7f);
    addStick(m, q, {w * std::cos(a), level, w * std::sin(a)},
             {w * std::cos(a) + r.normal() * 0.08f, tall * r.in(0.4f, 1.1f), w * std::sin(a)}, 0.025f, 0.025f,
             6, 0.5f);
  }
  if (r.chance(0.3f)) {
    float wide = r.in(0.3f, 0.8f), top = tall * r.in(0.5f, 1);
    for (float side : {-wide, wide})
      addStick(m, q, {side, level, 0}, {side * 1.2f, top, 0}, 0.03f, 0.03f, 6, 0.5f);
    for (int i = 1; i <= 4; i++) {
      float y = mix(level, top, i / 4.2f);
      addStick(m, q, {-wide * 1.2f, y, 0}, {wide * 1.2f, y, 0}, 0.025f, 0.025f, 5, 0.5f);
    }
  }
}

/** Everything that lies and sticks in the pot. */
inline void dressPot(Mesh &m, Random &r, const PotShape &pot, float level, float tall) {
  addSoil(m, r, pot, level);
  for (int i = r.chance(0.2f) ? r.intIn(1, 2) : 0; i > 0; i--) addLabel(m, r, level);
  if (r.chance(0.15f)) addCanes(m, r, level, tall);
}
