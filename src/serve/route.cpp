#include "serve/route.hpp"

#include <algorithm>

namespace tracewright {

namespace {

// Empty if the pattern does not fit.
std::optional<std::vector<std::string>> values_of(std::string_view pattern,
                                                  const RequestTarget& target) {
    std::vector<std::string> values;
    std::size_t at = 0;
    for (const std::string& segment : target.segments) {
        if (at >= pattern.size()) {
            return std::nullopt;
        }
        const auto end = std::min(pattern.find('/', at + 1), pattern.size());
        const std::string_view part = pattern.substr(at + 1, end - at - 1);
        if (part.starts_with('{') && !segment.empty()) {
            values.push_back(segment);
        } else if (part != segment) {
            return std::nullopt;
        }
        at = end;
    }
    return at == pattern.size() ? std::optional(values) : std::nullopt;
}

}  // namespace

const std::vector<Route>& routes() {
    static const std::vector<Route> all = [] {
        std::vector<Route> joined;
        for (const auto part :
             {session_routes(),   practice_routes(), review_routes(),      day_routes(),
              record_routes(),    import_routes(),   diary_routes(),       client_routes(),
              trust_routes(),     plan_routes(),     paper_routes(),       progress_routes(),
              trial_routes(),     question_routes(), meal_routes(),        sensor_routes(),
              writing_routes(),   audit_routes(),    safekeeping_routes(), share_routes(),
              share_page_routes()}) {
            joined.insert(joined.end(), part.begin(), part.end());
        }
        return joined;
    }();
    return all;
}

namespace {

Found found_at(Method method, const RequestTarget& target) {
    Found found;
    const Method wanted = method == Method::head ? Method::get : method;
    for (const Route& route : routes()) {
        auto values = values_of(route.pattern, target);
        if (values && route.method == wanted) {
            return {&route, std::move(*values), false};
        }
        found.other_method = found.other_method || values;
    }
    return found;
}

}  // namespace

Found route_of(Method method, const RequestTarget& target) {
    if (target.segments.size() > 1 && target.segments.front() == "share") {
        RequestTarget page = target;
        page.segments.resize(std::min<std::size_t>(page.segments.size(), 3));
        return found_at(Method::get, page);
    }
    return found_at(method, target);
}

const char* name_of(Method method) {
    switch (method) {
        case Method::get:
            return "get";
        case Method::head:
            return "head";
        case Method::post:
            return "post";
        case Method::put:
            return "put";
        case Method::delete_:
            return "delete";
        case Method::other:
            break;
    }
    return "other";
}

}  // namespace tracewright
