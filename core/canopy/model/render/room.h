// Where the plant stands: studio sweeps, tables, walls, gardens. Planes are met by rays; nothing here is ever
// labelled.
#pragma once
#include "furniture.h"
#include "paint.h"

struct Cloth {
  int kind = 0;
  Vec a, b;
  float scale = 1, turn = 0, contrast = 1;
};
inline Cloth someCloth(Random &r, bool loud) {
  Cloth t;
  t.kind = loud ? r.pick(10) : r.chance(0.6f) ? 0 : r.pick(10);
  t.scale = r.logIn(0.15f, 1.5f);
  t.turn = r.chance(0.5f) ? 0 : r.in(0, 6.28f);
  t.contrast = r.in(0.2f, 1);
  float q = r.unit01();
  Vec c = q < 0.35f   ? fromHsv(r.in(0, 1), r.in(0, 0.12f), r.in(0.6f, 1))
          : q < 0.6f  ? fromHsv(r.in(0.04f, 0.12f), r.in(0.2f, 0.7f), r.in(0.15f, 0.85f))
          : q < 0.72f ? fromHsv(r.in(0.15f, 0.45f), r.in(0.1f, 0.7f), r.in(0.1f, 0.8f))
                      : fromHsv(r.in(0, 1), r.in(0, 0.7f), r.in(0.05f, 0.95f));
  t.a = linear(c);
  t.b = r.chance(0.6f) ? t.a * r.in(0.3f, 1.5f) : linear(fromHsv(r.in(0, 1), r.in(0, 0.7f), r.in(0.05f, 1)));
  return t;
}
inline Vec clothAt(const Cloth &t, float u, float v) {
  float c = std::cos(t.turn), s = std::sin(t.turn), x = (u * c - v * s) * t.scale,
        y = (u * s + v * c) * t.scale, k = 0, cloud = cloudy().at(x * 0.13f, y * 0.13f),
        grain = grainy().at(x * 0.5f, y * 0.5f);
  switch (t.kind) {
  case 1: {
    float row = std::floor(y), along = x * 0.25f + fract(row * 0.618f);
    k = 0.5f * grainy().at(x * 0.06f + row * 0.37f, y * 0.9f) + line(y, 0.05f) + line(along, 0.015f);
    float tone = fract(std::floor(along) * 0.37f + row * 0.71f);
    k = k * 0.8f + tone * 0.3f;
    break;
  }                                                            // planks
  case 2: k = std::max(line(x, 0.05f), line(y, 0.05f)); break; // tiles
  case 3: {
    float row = std::floor(y * 2);
    k = std::max(line(y * 2, 0.1f), line(x + (int(row) & 1) * 0.5f, 0.05f));
    k = std::max(k, 0.35f * fract(std::floor(x + (int(row) & 1) * 0.5f) * 0.73f + row * 0.39f));
    break;
  }                                                                         // bricks
  case 4: k = 0.5f * (fract(x) > 0.5f) + 0.5f * (fract(y) > 0.5f); break;   // checks
  case 5: k = smooth(0.45f, 0.55f, fract(x)); break;                        // stripes
  case 6: k = line(cloudy().at(x * 0.1f, y * 0.1f) * 5, 0.12f); break;      // marble
  case 7: k = grain * 0.6f + 0.6f * grainy().at(x * 1.7f, y * 1.7f); break; // gravel, grass
  case 8: k = smooth(0.45f, 0.55f, cloud); break;                           // patches
  case 9: {
    float a = fract(x) - 0.5f, b = fract(y) - 0.5f;
    k = 1 - smooth(0.05f, 0.08f, a * a + b * b);
    break;
  } // dots
  default: break;
  }
  return mix(t.a, t.b, clamp01(k) * t.contrast) * (0.85f + 0.2f * cloud + 0.1f * grain);
}

/** A blurred picture far behind: shapes, leaves, discs of light, and at times an older render of our own. */
struct FarPicture {
  static constexpr int N = 192;
  std::vector<Vec> v;
  Vec &px(int x, int y) { return v[size_t(y) * N + x]; }
  void make(Random &r, bool leafy, const std::vector<std::vector<Vec>> &older) {
    v.assign(N * N, {});
    Vec top = linear(fromHsv(leafy ? r.in(0.2f, 0.6f) : r.in(0, 1), r.in(0, 0.5f), r.in(0.1f, 1))),
        low = linear(fromHsv(leafy ? r.in(0.1f, 0.4f) : r.in(0, 1), r.in(0.05f, 0.6f), r.in(0.05f, 0.8f)));
    for (int y = 0; y < N; y++)
      for (int x = 0; x < N; x++)
        px(x, y) = mix(top, low, y / float(N)) * (0.8f + 0.4f * cloudy().at(x * 0.004f, y * 0.004f));
    if (!older.empty() && r.chance(0.45f)) {
      auto &o = older[r.pick(int(older.size()))];
      bool flip = r.chance(0.5f);
      float z = r.in(0.35f, 1), ox = r.in(0, 1 - z), oy = r.in(0, 1 - z);
      for (int y = 0; y < N; y++)
        for (int x = 0; x < N; x++) {
          int sx = int((ox + z * (flip ? N - 1 - x : x) / N) * N), sy = int((oy + z * y / N) * N);
          px(x, y) = o[size_t(sy) * N + sx];
        }
    }
    int shapes = leafy ? r.intIn(60, 700) : r.intIn(0, 40);
    Vec green = leafGreen(r);
    for (int i = 0; i < shapes; i++) {
      Vec c = linear(leafy && r.chance(0.85f) ? mix(green, leafGreen(r), r.in(0, 0.6f))
                                              : fromHsv(r.in(0, 1), r.in(0, 0.8f), r.in(0.05f, 1))) *
              r.logIn(0.4f, 2.2f);
      float cx = r.in(0, N), cy = r.in(0, N), a = r.in(0, 3.14f), w = leafy ? r.logIn(2, 14) : r.logIn(4, 60),
            h = w * (leafy ? r.in(0.2f, 0.8f) : r.in(0.1f, 3));
      bool box = !leafy && r.chance(0.7f);
      if (box && r.chance(0.8f)) a = 0;
      int reach = int(std::max(w, h)) + 1;
      for (int y = std::max(0, int(cy) - reach); y < std::min(N, int(cy) + reach); y++)
        for (int x = std::max(0, int(cx) - reach); x < std::min(N, int(cx) + reach); x++) {
          float dx = (x - cx) * std::cos(a) + (y - cy) * std::sin(a),
                dy = -(x - cx) * std::sin(a) + (y - cy) * std::cos(a);
          bool in = box ? std::fabs(dx) < w && std::fabs(dy) < h : dx * dx / (w * w) + dy * dy / (h * h) < 1;
          if (in) px(x, y) = c * (0.8f + 0.4f * grainy().at(x * 0.02f, y * 0.02f));
        }
    }
    if (r.chance(0.8f)) blur(r.pick(7) + 1);
    if (r.chance(0.2f)) {
      int n = r.intIn(5, 50);
      for (int i = 0; i < n; i++) {
        Vec c = Vec{1, r.in(0.8f, 1), r.in(0.5f, 1)} * r.in(0.2f, 1.2f);
        float cx = r.in(0, N), cy = r.in(0, N), w = r.in(2, 9);
        for (int y = std::max(0, int(cy - w)); y < std::min(float(N), cy + w); y++)
          for (int x = std::max(0, int(cx - w)); x < std::min(float(N), cx + w); x++)
            if ((x - cx) * (x - cx) + (y - cy) * (y - cy) < w * w) px(x, y) = mix(px(x, y), c, 0.5f);
      }
    }
  }
  void blur(int reach) {
    std::vector<Vec> t(v.size());
    for (int pass = 0; pass < 4; pass++) {
      for (int y = 0; y < N; y++) {
        Vec sum;
        for (int x = -reach; x < N + reach; x++) {
          sum = sum + v[size_t(y) * N + std::min(N - 1, std::max(0, x))];
          if (x >= reach) {
            int c = x - reach;
            t[size_t(c) * N + y] = sum * (1.0f / (2 * reach + 1));
            sum = sum - v[size_t(y) * N + std::max(0, c - reach)];
          }
        }
      }
      std::swap(v, t);
    }
  }
  Vec at(float x, float y) const {
    float fx = clamp01(x) * (N - 1.01f), fy = clamp01(y) * (N - 1.01f);
    int x0 = int(fx), y0 = int(fy);
    float tx = fx - x0, ty = fy - y0;
    auto q = [&](int a, int b) { return v[size_t(b) * N + a]; };
    return mix(mix(q(x0, y0), q(x0 + 1, y0), tx), mix(q(x0, y0 + 1), q(x0 + 1, y0 + 1), tx), ty);
  }
};

enum class Place { Flat, Sweep, Indoors, Outdoors, Black };
struct Room {
  Place place = Place::Flat;
  float floorY = -2, wallZ = -4, tableFront = 3, tableBack = -3, tableHalf = 6, below = -8, cove = 1;
  bool table = false;
  Cloth floorCloth, wallCloth, tableCloth;
  FarPicture far;
  Vec flat{0.8f, 0.8f, 0.8f};
  struct Met {
    Vec colour, p, n;
    float z = 1e8f;
    bool lit = true;
  };
  Met meet(Vec o, Vec d, float x, float y) const {
    Met k;
    if (place == Place::Flat) {
      k.colour = flat;
      k.lit = false;
      return k;
    }
    auto plane = [&](float height) {
      return d.y < -1e-4f && o.y > height  ? (height - o.y) / d.y
             : d.y > 1e-4f && o.y < height ? (height - o.y) / d.y
                                           : 1e8f;
    };
    float wall = d.z < -1e-4f ? (wallZ - o.z) / d.z : 1e8f, floor = plane(floorY);
    Vec q = o + d * floor;
    bool onTable = !table || (std::fabs(q.x) < tableHalf && q.z < tableFront && q.z > tableBack);
    if (floor < wall && onTable) {
      k.z = floor;
      k.p = q;
      k.n = {0, d.y < 0 ? 1.0f : -1.0f, 0};
      k.colour = clothAt(table ? tableCloth : floorCloth, q.x, q.z);
      if (!table && (place == Place::Sweep || place == Place::Black) && q.z - wallZ < cove) {
        float t = 1 - (q.z - wallZ) / cove;
        k.n = unit(Vec{0, 1 - t, t});
        k.colour = mix(k.colour, clothAt(wallCloth, q.x, 0), t);
      }
      return k;
    }
    if (table) {
      floor = plane(below);
      q = o + d * floor;
      Vec edge = o + d * ((tableFront - o.z) / d.z);
      if (d.z < 0 && std::fabs(edge.x) < tableHalf && edge.y < floorY && edge.y > floorY - 0.35f) {
        k.z = (tableFront - o.z) / d.z;
        k.p = edge;
        k.n = {0, 0, 1};
        k.colour = clothAt(tableCloth, edge.x, edge.y) * 0.7f;
        return k;
      }
      if (floor < wall) {
        k.z = floor;
        k.p = q;
        k.n = {0, 1, 0};
        k.colour = clothAt(floorCloth, q.x, q.z);
        return k;
      }
    }
    if (place == Place::Outdoors || wall > 1e7f) {
      k.colour = far.at(x, y);
      k.lit = false;
      k.z = 1e6f;
      return k;
    }
    k.z = wall;
    k.p = o + d * wall;
    k.n = {0, 0, 1};
    k.colour = clothAt(wallCloth, k.p.x, k.p.y);
    return k;
  }
};
inline Vec greyish(Random &r, float low, float high) {
  return linear(fromHsv(r.in(0, 1), r.in(0, 0.07f), r.in(low, high)));
}
inline void furnish(Room &k, Random &r, float reach, float potHigh,
                    const std::vector<std::vector<Vec>> &older) {
  float q = r.unit01();
  k.place = q < 0.12f   ? Place::Flat
            : q < 0.45f ? Place::Sweep
            : q < 0.76f ? Place::Indoors
            : q < 0.93f ? Place::Outdoors
                        : Place::Black;
  k.floorY = -potHigh - 0.04f;
  k.wallZ = -r.logIn(1.3f, 5) * reach;
  k.cove = r.chance(0.5f) ? 0.05f : r.in(0.3f, 3);
  k.floorCloth = someCloth(r, true);
  k.wallCloth = someCloth(r, false);
  k.tableCloth = someCloth(r, true);
  if (k.place == Place::Flat)
    k.flat = r.chance(0.7f) ? greyish(r, 0.1f, 1) : linear(fromHsv(r.in(0, 1), r.in(0, 0.8f), r.in(0.1f, 1)));
  if (k.place == Place::Sweep || k.place == Place::Black) {
    k.wallCloth.kind = r.chance(0.85f) ? 0 : 7;
    k.wallCloth.contrast *= 0.2f;
    bool black = k.place == Place::Black;
    k.wallCloth.a = k.wallCloth.b = r.chance(0.8f) || black
                                        ? greyish(r,
                                                  black            ? 0.0f
                                                  : r.chance(0.7f) ? 0.88f
                                                                   : 0.2f,
                                                  black ? 0.16f : 1)
                                        : linear(fromHsv(r.in(0, 1), r.in(0.1f, 0.8f), r.in(0.2f, 0.95f)));
    k.floorCloth = k.wallCloth;
    if (r.chance(0.4f)) k.floorCloth.a = k.floorCloth.b = k.wallCloth.a * r.in(0.7f, 1.2f);
    return;
  }
  k.table = r.chance(0.7f);
  k.tableFront = r.in(1.2f, 4);
  k.tableBack = std::max(k.wallZ + 0.05f, -r.logIn(1.2f, 12));
  k.tableHalf = r.logIn(1.5f, 25);
  k.below = k.floorY - r.in(3, 12);
  k.far.make(r, k.place == Place::Outdoors ? r.chance(0.8f) : false, older);
}
