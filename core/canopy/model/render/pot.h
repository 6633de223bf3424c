// Pots, what lies and sticks in them, and turned ware in general (vases, bowls, lamps for the room).
#pragma once
#include "palette.h"

inline Vec wareColour(Random &r) {
  float q = r.unit01();
  if (q < 0.22f) return fromHsv(r.in(0.02f, 0.07f), r.in(0.35f, 0.75f), r.in(0.45f, 0.85f)); // terracotta
  if (q < 0.45f) return fromHsv(r.in(0, 1), r.in(0, 0.08f), r.in(0.8f, 1.0f));               // white
  if (q < 0.63f) return fromHsv(r.in(0, 1), r.in(0, 0.15f), r.in(0.03f, 0.22f));             // black
  if (q < 0.76f) return fromHsv(r.in(0, 1), r.in(0, 0.12f), r.in(0.25f, 0.8f));              // grey
  if (q < 0.84f) return fromHsv(r.in(0.06f, 0.14f), r.in(0.15f, 0.6f), r.in(0.4f, 0.95f));   // cream, straw
  return fromHsv(r.in(0, 1), r.in(0.2f, 0.9f), r.in(0.2f, 0.95f));                           // any
}
inline Surface wareSurface(Random &r, Label label) {
  Surface s;
  s.label = label;
  s.look = Look::Ware;
  s.colour = linear(wareColour(r));
  s.second = r.chance(0.5f) ? linear(wareColour(r)) : s.colour * r.in(0.4f, 1.3f);
  s.third = linear(wareColour(r));
  s.pattern = r.chance(0.55f) ? 0 : r.intIn(1, 9);
  s.amount = r.in(0.2f, 1);
  s.gloss = r.chance(0.5f) ? r.in(0, 0.15f) : r.in(0.2f, 1);
  s.sharpness = r.logIn(8, 200);
  s.roughness = r.chance(0.5f) ? 0.05f : r.in(0.1f, 0.8f);
  s.veinCount = float(r.intIn(3, 28));
  if (r.chance(0.08f)) {
    s.look = Look::Wicker;
    s.colour = linear(fromHsv(r.in(0.05f, 0.12f), r.in(0.3f, 0.65f), r.in(0.35f, 0.8f)));
    s.second = s.colour * 0.3f;
    s.veinCount = r.in(10, 30);
    s.gloss = 0.1f;
  }
  return s;
}

/** Turned or cornered ware: (radius, height) pairs swept around; `corner` 0 is round, 1 is square; `ribs`
 * flute the wall. */
inline void addWare(Mesh &m, int s, const std::vector<Vec> &profile, float corner, int ribs, float ribDepth,
                    Vec stretch) {
  size_t v0 = m.vertices.size(), t0 = m.triangles.size();
  int sides = 48;
  for (size_t i = 0; i < profile.size(); i++)
    for (int k = 0; k <= sides; k++) {
      float a = 6.2831853f * k / sides, c = std::cos(a), q = std::sin(a),
            box = 1 / std::max(std::fabs(c), std::fabs(q));
      float w = profile[i].x * mix(1.0f, std::min(box, 1.36f), corner) * (1 + ribDepth * std::cos(a * ribs));
      m.add(Vec{w * c * stretch.x, profile[i].y, w * q * stretch.z}, float(k) / sides, profile[i].y, 0.5f);
      if (i && k) {
        int w1 = int(v0 + i * (sides + 1) + k);
        m.add(w1, w1 - sides - 1, w1 - 1, s);
        m.add(w1 - 1, w1 - sides - 1, w1 - sides - 2, s);
      }
    }
  m.shadeSmooth(v0, t0);
}

struct PotShape {
  float high = 1.8f, bottom = 0.7f;
  std::vector<Vec> outside;
  Vec stretch{1, 1, 1};
  float corner = 0;
};

/** A pot below the rim plane: rim radius 1 at height 0, foot at -high. */
inline PotShape somePot(Mesh &m, Random &r, float high, bool flatTray) {
  PotShape pot;
  pot.high = high;
  Surface ware = wareSurface(r, Pot);
  int s = m.add(ware);
  pot.bottom = r.in(0.5f, 0.95f);
  int kind = r.pick(6);
  if (flatTray) {
    pot.bottom = r.in(0.75f, 1.0f);
    kind = r.pick(3);
  }
  auto &p = pot.outside;
  float wall = r.in(0.03f, 0.1f);
  if (r.chance(0.3f)) p.push_back({0.0f, -high, 0});
  int n = 10;
  for (int i = 0; i <= n; i++) { // from foot to rim
    float t = float(i) / n, w = mix(pot.bottom, 1.0f, t);
    if (kind == 2) w = pot.bottom + (1 - pot.bottom) * std::sin(t * 1.57f);       // bowl
    if (kind == 3) w = mix(pot.bottom, 1.0f, t) + 0.28f * std::sin(t * 3.14159f); // belly
    if (kind == 4) w = mix(pot.bottom, 1.0f, t * t);                              // flare
    if (kind == 5) w = 0.97f;                                                     // cylinder
    p.push_back({w, -high + high * t, 0});
  }
  float lip = r.chance(0.55f) ? r.in(0.03f, 0.14f) : 0, lipHigh = high * r.in(0.06f, 0.3f);
  if (lip > 0 && kind != 2 && kind != 3) {
    for (auto &q : p)
      if (q.y > -lipHigh) q.x += 0;
    p.insert(p.end() - 1, {p.back().x * 0.97f, -lipHigh - 0.01f, 0});
    p.insert(p.end() - 1, {1 + lip * 0.5f, -lipHigh, 0});
    p.back().x = 1 + lip * 0.5f;
  }
  p.push_back({p.back().x - wall * 0.5f, 0.02f, 0});
  p.push_back({p.back().x - wall, 0, 0});
  p.push_back({p.back().x - 0.02f, -0.5f * std::min(high, 1.0f), 0});
  pot.corner = r.chance(0.15f) ? r.in(0.5f, 1) : 0;
  int ribs = r.intIn(6, 40);
  float ribDepth = r.chance(0.2f) ? r.in(0.005f, 0.03f) : 0;
  if (flatTray || r.chance(0.06f)) pot.stretch = {r.in(1, 1.9f), 1, r.in(0.7f, 1)};
  addWare(m, s, p, pot.corner, ribs, ribDepth, pot.stretch);
  if (r.chance(0.25f)) {
    int q = r.chance(0.6f) ? s : m.add(wareSurface(r, Pot));
    float w = pot.bottom * r.in(1.1f, 1.6f), h = r.in(0.08f, 0.25f);
    addWare(m, q,
            {{0, -high - 0.02f, 0},
             {w * 0.8f, -high - 0.02f, 0},
             {w, -high - 0.02f + h, 0},
             {w - 0.05f, -high - 0.02f + h, 0},
             {w * 0.8f, -high + 0.03f, 0}},
            pot.corner, 6, 0, pot.stretch);
  }
  if (r.chance(0.08f))
    for (int i = 0; i < 3; i++)
      addBlob(
          m, s,
          {pot.bottom * 0.75f * std::cos(i * 2.1f), -high - 0.05f, pot.bottom * 0.75f * std::sin(i * 2.1f)},
          {0.1f, 0.1f, 0.1f}, {0, 1, 0}, 8, 0.5f);
  if (r.chance(0.15f)) {
    Surface plate;
    plate.label = Pot;
    plate.colour = linear(wareColour(r));
    plate.gloss = 0.2f;
    float w = r.in(0.12f, 0.45f), h = r.in(0.1f, 0.35f), y = -high * r.in(0.25f, 0.6f);
    float wallAt = mix(pot.bottom, 1.0f, 1 + y / high) + (kind == 3 ? 0.28f : 0);
    addBox(m, m.add(plate), {-w, y - h / 2, wallAt * 0.9f}, {w, y + h / 2, wallAt + 0.04f}, 0.5f);
  }
  if (r.chance(0.06f)) {
    Surface band;
    band.label = Pot;
    band.look = Look::Stem;
    band.colour = linear(wareColour(r));
    band.second = band.colour * 0.6f;
    float y = -high * r.in(0.2f, 0.6f), w = mix(pot.bottom, 1.0f, 1 + y / high) + (kind == 3 ? 0.28f : 0.02f);
    std::vector<Vec> ring;
    for (int i = 0; i <= 24; i++)
      ring.push_back(
          {w * std::cos(i * 0.2618f) * pot.stretch.x, y, w * std::sin(i * 0.2618f) * pot.stretch.z});
    addTube(m, m.add(band), ring, std::vector<float>(25, 0.03f), 5, 0.5f);
  }
  return pot;
}

/** Soil, gravel or moss on top; labels, canes and ties in it. `tall` is the plant's height. */
inline void dressPot(Mesh &m, Random &r, const PotShape &pot, float level, float tall) {
  Surface s;
  s.label = PotDressing;
  s.look = Look::Soil;
  s.pattern = r.pick(4);
  s.gloss = 0.03f;
  s.roughness = 1;
  s.colour = linear(s.pattern == 3    ? fromHsv(r.in(0.15f, 0.32f), r.in(0.4f, 0.8f), r.in(0.15f, 0.5f))
                    : r.chance(0.75f) ? fromHsv(r.in(0.03f, 0.1f), r.in(0.2f, 0.6f), r.in(0.07f, 0.35f))
                                      : fromHsv(r.in(0, 1), r.in(0, 0.15f), r.in(0.4f, 0.95f)));
  s.second = s.colour * r.in(0.2f, 0.6f);
  int soil = m.add(s);
  addWare(m, soil,
          {{0.93f, level - 0.02f, 0},
           {0.7f, level + r.in(-0.03f, 0.06f), 0},
           {0.35f, level + r.in(-0.02f, 0.09f), 0},
           {0.0f, level + r.in(0, 0.1f), 0}},
          pot.corner, 3, 0, pot.stretch);
  if (s.pattern == 2 || r.chance(0.2f)) {
    Surface g = s;
    g.look = Look::Ware;
    g.pattern = 0;
    g.gloss = r.in(0, 0.4f);
    g.roughness = 0.3f;
    g.colour = linear(wareColour(r));
    g.second = g.colour * 0.6f;
    g.label = PotDressing;
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
  if (r.chance(0.14f)) {
    Surface card;
    card.label = PotDressing;
    card.colour = linear(r.chance(0.6f) ? Vec{0.95f, 0.95f, 0.93f} : wareColour(r));
    card.gloss = 0.2f;
    int q = m.add(card);
    size_t v0 = m.vertices.size();
    float h = r.in(0.3f, 1.1f), w = r.in(0.07f, 0.22f);
    addBox(m, q, {-w, 0, -0.01f}, {w, h, 0.01f}, 0.5f);
    float a = r.in(0.2f, 2.9f);
    m.move(v0, {0.75f * std::cos(a), level - 0.1f, 0.75f * std::sin(a)}, 1, r.in(-0.8f, 0.8f));
  }
  if (r.chance(0.12f)) {
    Surface cane;
    cane.label = PotDressing;
    cane.look = Look::Stem;
    cane.colour = linear(r.chance(0.5f) ? fromHsv(r.in(0.08f, 0.14f), 0.5f, r.in(0.4f, 0.8f))
                                        : fromHsv(0.35f, r.in(0, 0.7f), r.in(0.1f, 0.6f)));
    cane.second = cane.colour * 0.7f;
    int q = m.add(cane), n = r.intIn(1, 4);
    for (int i = 0; i < n; i++) {
      float a = r.in(0, 6.28f), w = r.in(0, 0.7f);
      addStick(m, q, {w * std::cos(a), level, w * std::sin(a)},
               {w * std::cos(a) + r.normal() * 0.08f, tall * r.in(0.4f, 1.1f), w * std::sin(a)}, 0.025f,
               0.025f, 6, 0.5f);
    }
  }
}

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
