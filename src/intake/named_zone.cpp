#include "intake/named_zone.hpp"

#include "intake/offset_text.hpp"

namespace tracewright {

std::optional<std::chrono::seconds> NamedZone::offset_in(const std::string& name, WallTime wall,
                                                         std::optional<Instant> at) {
    if (const auto offset = offset_in_cell(name)) {
        return offset->east;
    }
    if (name != name_) {
        name_ = name;
        const auto zone = Zone::named(name);
        zone_ = zone ? std::optional{*zone} : std::nullopt;
    }
    if (!zone_) {
        return std::nullopt;
    }
    const WallResolution meaning = zone_->resolve(wall);
    if (!at && meaning.kind != WallResolution::Kind::unique) {
        return std::nullopt;
    }
    return zone_->offset_at(at.value_or(meaning.first));
}

}  // namespace tracewright
