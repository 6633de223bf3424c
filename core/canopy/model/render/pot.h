// Pots, and turned ware in general (vases, bowls, lamps for the room).
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
  if (r.chance(0.13f)) {
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

/** A looser second pot that hides most of the first one: cache-pots, baskets, boxes, sacks. */
inline void addOuterPot(Mesh &m, Random &r, const PotShape &pot) {
  float top = pot.high * r.in(-0.35f, 0.06f), rim = r.in(1.08f, 1.5f), foot = rim * r.in(0.65f, 1.05f),
        belly = r.chance(0.4f) ? r.in(0, 0.25f) : 0;
  std::vector<Vec> p;
  for (int i = 0; i <= 8; i++) {
    float t = i / 8.0f;
    p.push_back({mix(foot, rim, t) + belly * std::sin(t * 3.14159f), mix(-pot.high - 0.03f, top, t), 0});
  }
  p.push_back({rim - 0.06f, top, 0});
  p.push_back({rim - 0.08f, top - 0.4f * pot.high, 0});
  addWare(m, m.add(wareSurface(r, Pot)), p, r.chance(0.3f) ? r.in(0.5f, 1) : 0, r.intIn(5, 30),
          r.chance(0.3f) ? r.in(0.01f, 0.06f) : 0, pot.stretch);
}
/** A basket's handle over the plant, or two ears at the rim. */
inline void addHandle(Mesh &m, Random &r, int s) {
  if (r.chance(0.5f)) {
    float h = r.in(1.2f, 2.6f);
    std::vector<Vec> arc;
    for (int i = 0; i <= 14; i++) {
      float a = 3.14159f * i / 14;
      arc.push_back({std::cos(a), h * std::sin(a), 0});
    }
    addTube(m, s, arc, std::vector<float>(15, 0.05f), 6, 0.5f);
    return;
  }
  for (float side : {-1.0f, 1.0f})
    addTube(m, s, bentPath({side, -0.1f, 0}, {side * 1.6f, 0, 0}, {side * 0.98f, -0.5f, 0}, 6),
            std::vector<float>(7, 0.05f), 6, 0.5f);
}

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
  if (r.chance(0.1f)) addOuterPot(m, r, pot);
  if (r.chance(0.05f)) addHandle(m, r, s);
  return pot;
}
