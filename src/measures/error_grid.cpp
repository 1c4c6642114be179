#include "measures/error_grid.hpp"

#include <span>
#include <stdexcept>

namespace tracewright {

namespace {

struct Point {
    double x;
    double y;
};

// The lines of a consensus grid, the worst zone first; B, C, D below too. From memory.
struct Lines {
    std::array<std::span<const Point>, 4> above;  // E D C B
    std::array<std::span<const Point>, 3> below;  // D C B
};

constexpr Point e1[] = {{0, 150}, {35, 155}, {50, 550}};
constexpr Point d1[] = {{0, 100}, {25, 100}, {50, 125}, {80, 215}, {125, 550}};
constexpr Point c1[] = {{0, 60}, {30, 60}, {50, 80}, {70, 110}, {260, 550}};
constexpr Point b1[] = {{0, 50}, {30, 50}, {140, 170}, {280, 380}, {430, 550}};
constexpr Point lower_b1[] = {{50, 0}, {50, 30}, {170, 145}, {385, 300}, {550, 450}};
constexpr Point lower_c1[] = {{120, 0}, {120, 30}, {260, 130}, {550, 250}};
constexpr Point lower_d1[] = {{250, 0}, {250, 40}, {550, 150}};

constexpr Point e2[] = {{0, 200}, {35, 200}, {50, 550}};
constexpr Point d2[] = {{0, 80}, {25, 80}, {35, 90}, {125, 550}};
constexpr Point c2[] = {{0, 60}, {30, 60}, {280, 550}};
constexpr Point b2[] = {{0, 50}, {30, 50}, {230, 330}, {440, 550}};
constexpr Point lower_b2[] = {{50, 0}, {50, 30}, {90, 80}, {330, 230}, {550, 450}};
constexpr Point lower_c2[] = {{90, 0}, {260, 130}, {550, 250}};
constexpr Point lower_d2[] = {{250, 0}, {250, 40}, {410, 110}, {550, 160}};

constexpr Lines type_1{{e1, d1, c1, b1}, {lower_d1, lower_c1, lower_b1}};
constexpr Lines type_2{{e2, d2, c2, b2}, {lower_d2, lower_c2, lower_b2}};

const Lines& lines_of(ErrorGrid grid) {
    if (grid == ErrorGrid::clarke) {
        throw std::invalid_argument("that grid has no lines of this kind");
    }
    return grid == ErrorGrid::consensus_type_1 ? type_1 : type_2;
}

// The line's height at x, its last stretch run on; upright stretches count for nothing.
double height(std::span<const Point> line, double x) {
    std::size_t i = 1;
    while (i + 1 < line.size() && line[i].x < x) {
        ++i;
    }
    const Point a = line[i - 1];
    const Point b = line[i];
    return a.x == b.x ? b.y : a.y + (x - a.x) * (b.y - a.y) / (b.x - a.x);
}

bool below(std::span<const Point> line, double x, double y) {
    return x > line.front().x && y < height(line, x);
}

char consensus_zone(const Lines& lines, double x, double y) {
    constexpr std::string_view up = "EDCB";
    for (std::size_t i = 0; i < up.size(); ++i) {
        if (y > height(lines.above[i], x)) {
            return up[i];
        }
        if (i > 0 && below(lines.below[i - 1], x, y)) {
            return up[i];
        }
    }
    return 'A';
}

char clarke_zone(double x, double y) {
    if ((x <= 70 && y <= 70) || (y >= 0.8 * x && y <= 1.2 * x)) {
        return 'A';
    }
    if ((x >= 180 && y <= 70) || (x <= 70 && y >= 180)) {
        return 'E';
    }
    if ((x >= 70 && x <= 290 && y >= x + 110) || (x >= 130 && x <= 180 && y <= 1.4 * x - 182)) {
        return 'C';
    }
    const bool between = y >= 70 && y <= 180;
    if ((x >= 240 && between) || (x <= 175.0 / 3 && between) ||
        (x >= 175.0 / 3 && x <= 70 && y >= 1.2 * x)) {
        return 'D';
    }
    return 'B';
}

}  // namespace

std::string_view name_of(ErrorGrid grid) {
    switch (grid) {
        case ErrorGrid::consensus_type_1:
            return "consensus error grid, type 1";
        case ErrorGrid::consensus_type_2:
            return "consensus error grid, type 2";
        case ErrorGrid::clarke:
            return "Clarke error grid";
    }
    return "";
}

char error_zone(ErrorGrid grid, double reference, double reading) {
    return grid == ErrorGrid::clarke ? clarke_zone(reference, reading)
                                     : consensus_zone(lines_of(grid), reference, reading);
}

double upper_line_of_zone_b(ErrorGrid grid, double reference) {
    return height(lines_of(grid).above[3], reference);
}

}  // namespace tracewright
