// The drawing itself: which triangle is seen at each sample, how much light reaches it, and what it then
// looks like.
#pragma once
#include "mesh.h"

struct Camera {
  Vec at, forward, right, up;
  float focal = 2;                        // projection: x/z * focal
  float zoom = 1, shiftX = 0, shiftY = 0; // then scaled and shifted: a window cut from a larger photo
  void look(Vec from, Vec to) {
    at = from;
    forward = unit(to - from);
    right = unit(cross(forward, {0, 1, 0}));
    up = cross(right, forward);
  }
  /** x, y in frame units (0..1 across the frame), z the distance along the view. */
  Vec project(Vec p) const {
    Vec d = p - at;
    float z = dot(d, forward);
    float i = z > 1e-3f ? 1 / z : 0;
    return {(dot(d, right) * i * focal) * zoom + shiftX, (-dot(d, up) * i * focal) * zoom + shiftY, z};
  }
  Vec ray(float x, float y) const {
    float a = (x - shiftX) / zoom / focal, b = -(y - shiftY) / zoom / focal;
    return unit(forward + right * a + up * b);
  }
};

/** A far light with its own depth picture; several together make a soft one. */
struct Light {
  Vec d, colour, side, up;
  float extent = 1;
  Vec centre;
  std::vector<float> depth;
  static constexpr int N = 256;
  void shine(const Mesh &m, Vec about, float reach) {
    centre = about;
    extent = reach;
    side = anySide(d);
    up = cross(d, side);
    depth.assign(N * N, -1e9f);
    std::vector<Vec> q(m.vertices.size());
    for (size_t i = 0; i < q.size(); i++) {
      Vec p = m.vertices[i].p - about;
      q[i] = {(dot(p, side) / reach * 0.5f + 0.5f) * N, (dot(p, up) / reach * 0.5f + 0.5f) * N, dot(p, d)};
    }
    for (auto &t : m.triangles) {
      Vec a = q[t.a], b = q[t.b], c = q[t.c];
      int x0 = std::max(0, int(std::min({a.x, b.x, c.x}))),
          x1 = std::min(N - 1, int(std::max({a.x, b.x, c.x}))),
          y0 = std::max(0, int(std::min({a.y, b.y, c.y}))),
          y1 = std::min(N - 1, int(std::max({a.y, b.y, c.y})));
      float area = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
      if (std::fabs(area) < 1e-8f) continue;
      float inv = 1 / area;
      for (int y = y0; y <= y1; y++)
        for (int x = x0; x <= x1; x++) {
          float px = x + 0.5f, py = y + 0.5f, w0 = ((b.x - px) * (c.y - py) - (b.y - py) * (c.x - px)) * inv,
                w1 = ((c.x - px) * (a.y - py) - (c.y - py) * (a.x - px)) * inv, w2 = 1 - w0 - w1;
          if (w0 < -0.01f || w1 < -0.01f || w2 < -0.01f) continue;
          float z = w0 * a.z + w1 * b.z + w2 * c.z;
          float &best = depth[y * N + x];
          if (z > best) best = z;
        }
    }
  }
  float reaches(Vec p, float jx, float jy) const {
    Vec q = p - centre;
    int x = int((dot(q, side) / extent * 0.5f + 0.5f) * N + jx),
        y = int((dot(q, up) / extent * 0.5f + 0.5f) * N + jy);
    if (x < 0 || y < 0 || x >= N || y >= N) return 1;
    return depth[y * N + x] > dot(q, d) + extent * 0.014f ? 0.0f : 1.0f;
  }
};

struct Sample {
  float z = 1e9f;
  int triangle = -1;
};

/** Fills the visibility buffer of side `n` samples. Triangles that reach behind the camera are left out. */
inline void rasterise(const Mesh &m, const Camera &cam, int n, std::vector<Sample> &out,
                      std::vector<Vec> &screen) {
  out.assign(size_t(n) * n, {});
  screen.resize(m.vertices.size());
  for (size_t i = 0; i < screen.size(); i++) {
    Vec p = cam.project(m.vertices[i].p);
    screen[i] = {p.x * n, p.y * n, p.z > 0.05f ? 1 / p.z : 0};
  }
  for (size_t i = 0; i < m.triangles.size(); i++) {
    auto &t = m.triangles[i];
    Vec a = screen[t.a], b = screen[t.b], c = screen[t.c];
    if (a.z <= 0 || b.z <= 0 || c.z <= 0) continue;
    float lowX = std::min({a.x, b.x, c.x}), highX = std::max({a.x, b.x, c.x}),
          lowY = std::min({a.y, b.y, c.y}), highY = std::max({a.y, b.y, c.y});
    if (highX < 0 || highY < 0 || lowX >= n || lowY >= n) continue;
    int x0 = std::max(0, int(lowX - 0.5f)), x1 = std::min(n - 1, int(highX + 0.5f)),
        y0 = std::max(0, int(lowY - 0.5f)), y1 = std::min(n - 1, int(highY + 0.5f));
    float area = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    if (std::fabs(area) < 1e-9f) continue;
    float inv = 1 / area;
    float dx0 = -(c.y - b.y) * inv, dx1 = -(a.y - c.y) * inv;
    for (int y = y0; y <= y1; y++) {
      float px = x0 + 0.5f, py = y + 0.5f, w0 = ((b.x - px) * (c.y - py) - (b.y - py) * (c.x - px)) * inv,
            w1 = ((c.x - px) * (a.y - py) - (c.y - py) * (a.x - px)) * inv;
      for (int x = x0; x <= x1; x++, w0 += dx0, w1 += dx1) {
        float w2 = 1 - w0 - w1;
        if (w0 < 0 || w1 < 0 || w2 < 0) continue;
        float z = 1 / (w0 * a.z + w1 * b.z + w2 * c.z);
        Sample &s = out[size_t(y) * n + x];
        if (z < s.z) {
          s.z = z;
          s.triangle = int(i);
        }
      }
    }
  }
}

struct Point {
  Vec p, n;
  float u, v, tint;
  const Surface *s;
};
inline Point pointSeen(const Mesh &m, const std::vector<Vec> &screen, const Sample &s, float px, float py) {
  auto &t = m.triangles[s.triangle];
  Vec a = screen[t.a], b = screen[t.b], c = screen[t.c];
  float inv = 1 / ((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
  float w0 = ((b.x - px) * (c.y - py) - (b.y - py) * (c.x - px)) * inv * a.z * s.z,
        w1 = ((c.x - px) * (a.y - py) - (c.y - py) * (a.x - px)) * inv * b.z * s.z, w2 = 1 - w0 - w1;
  const Vertex &A = m.vertices[t.a], &B = m.vertices[t.b], &C = m.vertices[t.c];
  return {A.p * w0 + B.p * w1 + C.p * w2,
          unit(A.n * w0 + B.n * w1 + C.n * w2),
          A.u * w0 + B.u * w1 + C.u * w2,
          A.v * w0 + B.v * w1 + C.v * w2,
          A.tint,
          &m.surfaces[t.surface]};
}
