// Triangles with what they are made of. Every vertex carries its own tint, so that no two leaves look alike.
#pragma once
#include "vec.h"

/** What the network is to tell apart. */
enum Label : uint8_t { Background = 0, Foliage = 1, Flower = 2, Pot = 3, Soil = 4, Support = 5 };
constexpr int LabelCount = 6;
enum class Look : uint8_t { Blade, Fan, Petal, Bark, Stem, Ware, Soil, Plain, Wicker, Cactus };

struct Surface {
  Label label = Background;
  Look look = Look::Plain;
  Vec colour{0.5f, 0.5f, 0.5f}, second{0.5f, 0.5f, 0.5f}, third{0.5f, 0.5f, 0.5f};
  float gloss = 0.1f;    // strength of the mirror-like part, 0..1
  float sharpness = 30;  // exponent of the highlight
  float letsThrough = 0; // share of light that shines through a leaf or petal
  int pattern = 0;       // variegation, glaze or weave
  float amount = 0;      // how much of the pattern
  float veins = 0, veinCount = 8;
  float roughness = 0; // bump strength
};
struct Vertex {
  Vec p, n;
  float u, v, tint;
};
struct Triangle {
  int a, b, c;
  int surface;
};

struct Mesh {
  std::vector<Vertex> vertices;
  std::vector<Triangle> triangles;
  std::vector<Surface> surfaces;
  size_t budget = 90000; // leaves stop growing past this many triangles, so that no picture takes for ever
  int add(const Surface &s) {
    surfaces.push_back(s);
    return int(surfaces.size()) - 1;
  }
  int add(Vec p, float u, float v, float tint) {
    vertices.push_back({p, {0, 0, 0}, u, v, tint});
    return int(vertices.size()) - 1;
  }
  void add(int a, int b, int c, int s) { triangles.push_back({a, b, c, s}); }
  /** Smooth normals for everything added since the given marks. */
  void shadeSmooth(size_t firstVertex, size_t firstTriangle) {
    for (size_t i = firstTriangle; i < triangles.size(); i++) {
      auto &t = triangles[i];
      Vec n = cross(vertices[t.b].p - vertices[t.a].p, vertices[t.c].p - vertices[t.a].p);
      vertices[t.a].n = vertices[t.a].n + n;
      vertices[t.b].n = vertices[t.b].n + n;
      vertices[t.c].n = vertices[t.c].n + n;
    }
    for (size_t i = firstVertex; i < vertices.size(); i++) vertices[i].n = unit(vertices[i].n);
  }
  /** Everything counts as background: used for neighbours of the plant that is asked for. */
  void belongsToBackground(size_t firstSurface) {
    for (size_t i = firstSurface; i < surfaces.size(); i++) surfaces[i].label = Background;
  }
  void move(size_t firstVertex, Vec by, float scale, float turn) {
    float c = std::cos(turn), s = std::sin(turn);
    for (size_t i = firstVertex; i < vertices.size(); i++) {
      auto &w = vertices[i];
      w.p = Vec{w.p.x * c - w.p.z * s, w.p.y, w.p.x * s + w.p.z * c} * scale + by;
      w.n = {w.n.x * c - w.n.z * s, w.n.y, w.n.x * s + w.n.z * c};
    }
  }
};

/** A tube along a path; `radius` per point. */
inline void addTube(Mesh &m, int s, const std::vector<Vec> &path, const std::vector<float> &radius, int sides,
                    float tint) {
  size_t v0 = m.vertices.size(), t0 = m.triangles.size();
  Vec side = anySide(unit(path[1] - path[0]));
  for (size_t i = 0; i < path.size(); i++) {
    Vec d = unit(path[std::min(i + 1, path.size() - 1)] - path[i ? i - 1 : 0]);
    side = unit(side - d * dot(side, d));
    Vec up = cross(d, side);
    for (int k = 0; k <= sides; k++) {
      float a = 6.2831853f * k / sides;
      m.add(path[i] + (side * std::cos(a) + up * std::sin(a)) * radius[i], float(i) / (path.size() - 1),
            float(k) / sides, tint);
      if (i && k) {
        int q = int(v0 + i * (sides + 1) + k);
        m.add(q, q - 1, q - sides - 1, s);
        m.add(q - 1, q - sides - 2, q - sides - 1, s);
      }
    }
  }
  m.shadeSmooth(v0, t0);
}
inline void addStick(Mesh &m, int s, Vec a, Vec b, float ra, float rb, int sides, float tint) {
  addTube(m, s, {a, mix(a, b, 0.5f), b}, {ra, (ra + rb) / 2, rb}, sides, tint);
}

/** A bent stem: quadratic Bézier from `a` to `b` through the pull of `c`. */
inline std::vector<Vec> bentPath(Vec a, Vec c, Vec b, int n) {
  std::vector<Vec> p;
  for (int i = 0; i <= n; i++) {
    float t = float(i) / n;
    p.push_back(mix(mix(a, c, t), mix(c, b, t), t));
  }
  return p;
}

/** A blob: sphere of `n` slices, squashed to the radii, its top turned to `axis`. */
inline void addBlob(Mesh &m, int s, Vec at, Vec radii, Vec axis, int n, float tint) {
  size_t v0 = m.vertices.size(), t0 = m.triangles.size();
  Vec side = anySide(axis), third = cross(axis, side);
  int rows = std::max(3, n / 2);
  for (int i = 0; i <= rows; i++)
    for (int k = 0; k <= n; k++) {
      float e = 3.14159265f * (float(i) / rows - 0.5f), a = 6.2831853f * k / n, q = std::cos(e);
      m.add(at + axis * (std::sin(e) * radii.y) + side * (q * std::cos(a) * radii.x) +
                third * (q * std::sin(a) * radii.z),
            float(i) / rows, float(k) / n, tint);
      if (i && k) {
        int w = int(v0 + i * (n + 1) + k);
        m.add(w, w - 1, w - n - 1, s);
        m.add(w - 1, w - n - 2, w - n - 1, s);
      }
    }
  m.shadeSmooth(v0, t0);
}

inline void addBox(Mesh &m, int s, Vec lo, Vec hi, float tint) {
  for (int axis = 0; axis < 3; axis++)
    for (int end = 0; end < 2; end++) {
      size_t v0 = m.vertices.size(), t0 = m.triangles.size();
      for (int k = 0; k < 4; k++) {
        float q[3], a = (k == 1 || k == 2), b = k >= 2;
        q[axis] = end;
        q[(axis + 1) % 3] = a;
        q[(axis + 2) % 3] = b;
        m.add({mix(lo.x, hi.x, q[0]), mix(lo.y, hi.y, q[1]), mix(lo.z, hi.z, q[2])}, a, b, tint);
      }
      int w = int(v0);
      if (end) {
        m.add(w, w + 1, w + 2, s);
        m.add(w, w + 2, w + 3, s);
      } else {
        m.add(w, w + 2, w + 1, s);
        m.add(w, w + 3, w + 2, s);
      }
      m.shadeSmooth(v0, t0);
    }
}
