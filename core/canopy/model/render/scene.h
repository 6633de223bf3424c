// One random picture: a plant that is asked for, its place, its neighbours, the camera and the light.
#pragma once
#include "habits.h"
#include "room.h"

struct Scene {
  Mesh mesh;
  Room room;
  Camera camera;
  std::vector<Light> lights;
  Vec bounce;
  Vec sky;
  float hazeFar = 0, blurFar = 0, exposure = 1, focus = 10;
  bool flat = false;
  size_t subjectEnd = 0;
};

struct Sizes {
  float high, wide, potHigh;
  int habit;
  bool tray;
};
inline Sizes someSizes(Random &r) {
  static const int habits[] = {0, 0, 0, 0, 0, 0,  1,  1,  1,  2,  2,  2,  3,  3,  4,  4,  5,  6, 6,
                               6, 7, 8, 9, 9, 10, 10, 10, 11, 11, 11, 12, 12, 12, 12, 13, 13, 13};
  Sizes s;
  s.habit = habits[r.pick(int(std::size(habits)))];
  s.high = r.logIn(1.6f, 7);
  s.wide = s.high * r.logIn(0.35f, 1.2f);
  s.potHigh = r.logIn(0.7f, 2.4f);
  s.tray = s.habit == 4 && r.chance(0.6f);
  if (s.habit == 0 || s.habit == 12) {
    s.high = r.logIn(1.6f, 5.5f);
    s.wide = s.high * r.logIn(0.45f, 1.1f);
  }
  if (s.habit == 8 || s.habit == 9) s.high = r.logIn(0.8f, 3);
  if (s.habit == 3 || s.habit == 7) {
    s.high = r.logIn(2.5f, 7);
    s.wide = s.high * r.in(0.2f, 0.5f);
  }
  if (s.habit == 6) {
    s.high = r.logIn(1.0f, 3);
    s.wide = r.in(1.2f, 3.2f);
  }
  if (s.habit == 10) {
    s.high = r.logIn(1, 7);
    s.wide = r.in(0.6f, 2.4f);
    s.potHigh = r.logIn(0.5f, 1.6f);
  }
  if (s.habit == 13) {
    s.high = r.logIn(1.4f, 5);
    s.wide = s.high * r.logIn(0.5f, 1.3f);
    s.tray = r.chance(0.4f);
  }
  if (s.tray) {
    s.potHigh = r.in(0.25f, 0.8f);
    s.high = r.in(1.6f, 4.2f);
    s.wide = s.high * r.in(0.5f, 1.1f);
  }
  return s;
}

/** Plant and pot at the origin, rim at height 0. */
inline void addPotPlant(Mesh &m, Random &r, const Sizes &s, float detail, bool pot) {
  float soil = r.chance(0.7f) ? r.in(-0.25f, -0.03f) : r.in(0, 0.1f);
  if (pot) {
    PotShape shape = somePot(m, r, s.potHigh, s.tray);
    dressPot(m, r, shape, soil, s.high);
  }
  AnyPlant p{{m, r, s.high, s.wide}};
  p.soil = soil;
  p.detail = detail;
  p.inner = 0.8f;
  if (r.chance(0.45f)) p.lean = Vec{r.normal(), 0, r.normal()} * (0.12f * s.high);
  p.bloom = r.chance(0.42f) ? 0 : r.in(0.05f, 1);
  p.flower = someFlower(m, r, std::max(s.high, s.wide) * r.logIn(0.07f, 0.34f));
  p.grow(s.habit);
  for (int i = r.chance(0.13f) ? r.intIn(1, 3) : 0; i > 0;
       i--) { // several plants in one pot, often of one kind
    size_t v0 = m.vertices.size();
    Sizes second = r.chance(0.5f) ? s : someSizes(r);
    p.high = s.high * r.in(0.3f, 0.9f);
    p.wide = s.wide * r.in(0.4f, 0.9f);
    p.grow(second.habit == 8 ? 0 : second.habit);
    float a = r.in(0, 6.28f), w = r.in(0, 0.6f);
    m.move(v0, {w * std::cos(a), 0, w * std::sin(a)}, 1, 0);
  }
}

inline void addLights(Scene &s, Random &r, float reach, Vec about) {
  bool hard = r.chance(0.3f);
  float keyShare = s.room.place == Place::Flat ? r.in(0.2f, 0.8f) : r.in(0.1f, 0.85f);
  float a = r.in(0, 6.28f), e = r.in(0.35f, 1.4f);
  if (r.chance(0.6f)) a = r.in(0.2f, 2.94f);
  Vec key{std::cos(a) * std::cos(e), std::sin(e), std::sin(a) * std::cos(e)};
  Vec warm =
      mix(Vec{1, 1, 1}, r.chance(0.5f) ? Vec{1.1f, 0.97f, 0.75f} : Vec{0.9f, 0.98f, 1.12f}, r.unit01());
  int keys = hard ? 1 : 4;
  for (int i = 0; i < keys; i++) {
    Light l;
    l.d = unit(key + r.direction() * (hard ? 0.02f : r.in(0.1f, 0.45f)));
    if (l.d.y < 0.08f) l.d.y = 0.08f;
    l.colour = warm * (keyShare * 1.5f / keys);
    s.lights.push_back(l);
  }
  Vec cool = mix(Vec{1, 1, 1}, Vec{0.9f, 0.97f, 1.1f}, r.unit01());
  float fromAbove = r.in(0.2f, 1), spin = r.in(0, 6.28f);
  for (int i = 0; i < 7; i++) {
    float y = (i + 0.6f) / 7.2f, b = spin + i * 2.39996f, q = std::sqrt(1 - y * y);
    Light l;
    l.d = {q * std::cos(b), y, q * std::sin(b)};
    l.colour = cool * ((1 - keyShare) * 0.36f * mix(1.0f, 0.4f + y, fromAbove));
    s.lights.push_back(l);
  }
  // a wall or leaf that faces the camera a little upwards gets light 1, so that white comes out white
  Vec facing = unit({0, 0.5f, 0.87f});
  float sum = 0;
  for (auto &l : s.lights)
    sum += std::max(0.0f, dot(l.d, facing)) * (l.colour.x + l.colour.y + l.colour.z) / 3;
  for (auto &l : s.lights) l.colour = l.colour * (1 / std::max(0.35f, sum));
  for (auto &l : s.lights) l.shine(s.mesh, about, reach);
  s.sky = cool * r.in(0.3f, 1);
  s.bounce = (s.room.place == Place::Flat ? Vec{0.5f, 0.5f, 0.5f} : s.room.floorCloth.a) * r.in(0.05f, 0.3f) +
             Vec{0.03f, 0.03f, 0.03f};
}

/** Looks at the subject so that it takes `share` of the frame, or is cut by it. */
inline void aim(Scene &s, Random &r, const Sizes &z, bool potSeen) {
  float tall = z.high + z.potHigh, away = r.logIn(2.2f, 9) * std::max({tall, z.wide * 1.5f, 2.5f}),
        e = r.chance(0.75f) ? r.in(0.0f, 0.35f) : r.in(-0.06f, 0.7f), middle = (z.high - z.potHigh) / 2,
        a = r.normal() * 0.05f;
  s.camera.look(Vec{std::sin(a) * away, middle + std::sin(e) * away, std::cos(e) * away}, {0, middle, 0});
  s.focus = away;
  if (s.camera.at.y < s.room.floorY + 0.4f) s.camera.look({0, s.room.floorY + 0.4f, away}, {0, middle, 0});
  float x0 = 1e9f, x1 = -1e9f, y0 = 1e9f, y1 = -1e9f, rim = 0;
  for (size_t i = 0; i < s.subjectEnd; i += 3) {
    Vec p = s.camera.project(s.mesh.vertices[i].p);
    if (p.z < 0.1f) continue;
    x0 = std::min(x0, p.x);
    x1 = std::max(x1, p.x);
    y0 = std::min(y0, p.y);
    y1 = std::max(y1, p.y);
  }
  rim = s.camera.project({0, 0, 0}).y;
  float q = r.unit01(),
        share = q < 0.16f  ? r.logIn(0.12f, 0.4f)
                : q < 0.8f ? r.in(0.4f, 0.97f)
                           : r.in(0.95f, 1.7f),
        span = std::max(x1 - x0, y1 - y0);
  s.camera.zoom = share / span;
  float w = (x1 - x0) * s.camera.zoom, h = (y1 - y0) * s.camera.zoom;
  auto put = [&](float size) {
    float room = std::fabs(1 - size) / 2;
    return 0.5f + r.in(-1, 1) * room * (size < 1 ? 0.75f : 0.55f) * (size < 1 && r.chance(0.5f) ? 0.35f : 1);
  };
  float cx = 0.5f + (w < 1 ? (1 - w) / 2 * r.normal() * 0.35f : (w - 1) / 2 * r.in(-0.5f, 0.5f)), cy = put(h);
  cx = std::min(0.78f, std::max(0.22f, cx));
  if (r.chance(0.12f)) cy = 1 - h / 2 + r.in(-0.02f, 0.08f); // standing on the lower edge
  s.camera.shiftX = cx - (x0 + x1) / 2 * s.camera.zoom;
  s.camera.shiftY = cy - (y0 + y1) / 2 * s.camera.zoom;
  if (!potSeen) {
    float rimAt = s.camera.shiftY + rim * s.camera.zoom;
    if (rimAt < 1) s.camera.shiftY += 1 - rimAt + r.in(-0.02f, 0.15f);
  }
}

/** White before white, black before black: pot or flowers in the colour of what is behind them. */
inline void blendIn(Scene &s, Random &r) {
  Vec behind = s.room.place == Place::Flat       ? s.room.flat
               : s.room.place == Place::Outdoors ? s.room.far.at(0.5f, 0.5f)
                                                 : s.room.wallCloth.a;
  Label which = r.chance(0.55f) ? Pot : Flower;
  for (auto &q : s.mesh.surfaces)
    if (q.label == which) {
      q.colour = behind * r.in(0.7f, 1.15f);
      q.second = mix(q.second, q.colour, r.unit01());
    }
}
/** What stands about in rooms and gardens. */
inline void addSurroundings(Scene &s, Random &r, float reach) {
  Mesh &m = s.mesh;
  if (r.chance(0.22f)) s.room.floorY -= addFooting(m, r, s.room.floorY);
  float floorY = s.room.floorY, wallZ = s.room.wallZ;
  for (int i = r.chance(0.5f) ? r.intIn(1, 7) : 0; i > 0; i--) {
    size_t v0 = m.vertices.size();
    addThing(m, r, r.logIn(0.4f, 2.5f));
    float x = r.in(1.5f, 2 + reach * 2) * (r.chance(0.5f) ? 1 : -1);
    m.move(v0, {x, floorY, r.in(wallZ * 0.9f, 0.8f)}, 1, r.in(0, 6));
  }
  bool inside = s.room.place == Place::Indoors;
  if (r.chance(inside ? 0.4f : 0.15f))
    for (int i = r.intIn(1, 3); i > 0; i--) addPane(m, r, reach, wallZ);
  if (inside && r.chance(0.14f)) addCurtain(m, r, reach, wallZ, s.room.below);
  if (inside && r.chance(0.16f)) addShelves(m, r, reach, wallZ, floorY);
  if (r.chance(inside ? 0.1f : 0.25f))
    addFence(m, r, reach, r.in(wallZ, -1.2f), s.room.table ? s.room.below : floorY);
  if (r.chance(inside ? 0.04f : 0.2f)) addRubble(m, r, reach, floorY);
  if (!inside && r.chance(0.2f)) addGrass(m, r, reach, floorY);
}
/** Foliage behind, larger than the plant itself. */
inline void addHedge(Scene &s, Random &r, float reach) {
  Mesh &m = s.mesh;
  size_t v0 = m.vertices.size(), s0 = m.surfaces.size();
  m.budget = m.triangles.size() + 25000;
  AnyPlant hedge{{m, r, reach * r.in(0.8f, 2.5f), reach * r.in(1, 3)}};
  hedge.detail = 0.5f;
  hedge.bloom = r.chance(0.3f) ? 0.3f : 0;
  hedge.flower = someFlower(m, r, reach * 0.15f);
  static const int habits[] = {0, 0, 0, 0, 1, 11, 13};
  hedge.grow(habits[r.pick(7)]);
  m.belongsToBackground(s0);
  m.move(v0, {r.in(-2, 2) * reach, r.in(-0.5f, 0.5f) * reach, -reach * r.in(1.0f, 2.2f)}, 1, 0);
}

inline void compose(Scene &s, Random &r, const std::vector<std::vector<Vec>> &older) {
  Mesh &m = s.mesh;
  Sizes z = someSizes(r);
  bool potSeen = !r.chance(0.09f);
  addPotPlant(m, r, z, 1, potSeen);
  s.subjectEnd = m.vertices.size();
  float lowest = 0;
  for (auto &v : m.vertices) lowest = std::min(lowest, v.p.y);
  float reach = std::max({z.high, z.wide, 1.5f});
  furnish(s.room, r, reach, z.potHigh, older);
  if (lowest < s.room.floorY && s.room.place != Place::Flat) {
    if (z.habit == 6 && r.chance(0.6f)) {
      s.room.floorY = lowest - 0.05f;
      size_t v0 = m.vertices.size();
      Surface stand = wareSurface(r, Background);
      int q = m.add(stand);
      addBox(m, q, {-0.9f, s.room.floorY, -0.9f}, {0.9f, -z.potHigh - 0.03f, 0.9f}, 0.5f);
      (void)v0;
    } else
      for (auto &v : m.vertices)
        if (v.p.y < s.room.floorY) v.p.y = s.room.floorY + 0.01f;
  }
  if (r.chance(s.room.place == Place::Flat ? 0.4f : 0.2f)) blendIn(s, r);
  if (s.room.place == Place::Indoors || s.room.place == Place::Outdoors) addSurroundings(s, r, reach);
  bool crowd = s.room.place == Place::Flat
                   ? r.chance(0.03f)
                   : r.chance(s.room.place == Place::Sweep || s.room.place == Place::Black ? 0.1f : 0.42f);
  if (crowd)
    for (int i = r.intIn(1, 3), k = 0; k < i; k++) { // neighbours, at times touching, often of the same kind
      size_t v0 = m.vertices.size(), s0 = m.surfaces.size();
      m.budget = m.triangles.size() + 25000;
      Sizes n = r.chance(0.5f) ? z : someSizes(r);
      addPotPlant(m, r, n, 0.4f, true);
      m.belongsToBackground(s0);
      float side = (k & 1) != (r.chance(0.1f)) ? 1 : -1,
            deep = r.chance(0.5f) ? r.in(-1.5f, 0.3f) : r.in(s.room.wallZ, -1), size = r.in(0.6f, 1.3f);
      m.move(v0,
             {side * (std::max(z.wide, 1.0f) + n.wide * size) * r.in(0.8f, 1.5f),
              s.room.floorY + n.potHigh * size, deep},
             size, r.in(0, 6.28f));
    }
  int hedges = s.room.place == Place::Outdoors ? (r.chance(0.55f) ? r.intIn(1, 2) : 0)
                                               : s.room.place == Place::Indoors && r.chance(0.2f);
  for (; hedges > 0; hedges--) addHedge(s, r, reach);
  aim(s, r, z, potSeen);
  addLights(s, r, 1.5f * std::max({z.high + z.potHigh, z.wide * 1.4f, 3.0f}),
            {0, (z.high - z.potHigh) / 2, 0});
  bool studio = s.room.place == Place::Sweep || s.room.place == Place::Black || s.room.place == Place::Flat;
  s.exposure = studio ? r.logIn(0.75f, 1.35f) : r.logIn(0.5f, 1.7f);
  s.blurFar = r.chance(studio ? 0.1f : 0.55f) ? r.logIn(1, 12) : 0;
}
