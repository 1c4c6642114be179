#include "render/fonts.hpp"

#include "render/cairo_canvas.hpp"
#include "render/theme.hpp"

#include <fmt/format.h>
#include <fontconfig/fontconfig.h>

#include <algorithm>
#include <memory>

namespace tracewright {

namespace {

struct DestroyPattern {
    void operator()(FcPattern* pattern) const { FcPatternDestroy(pattern); }
};
using FontPattern = std::unique_ptr<FcPattern, DestroyPattern>;

const FcChar8* as_font_text(const char* text) {
    return reinterpret_cast<const FcChar8*>(text);
}

// Latin, Greek and Cyrillic are in the house's own font: nearly every text is told at a glance.
bool in_the_house_font(std::string_view text) {
    constexpr unsigned char lead_byte_of_arabic = 0xD8;
    return std::ranges::all_of(
        text, [](char c) { return static_cast<unsigned char>(c) < lead_byte_of_arabic; });
}

}  // namespace

std::string font_and_version() {
    const FontPattern wanted(FcPatternCreate());
    FcPatternAddString(wanted.get(), FC_FAMILY, as_font_text(font_family));
    FcConfigSubstitute(nullptr, wanted.get(), FcMatchPattern);
    FcDefaultSubstitute(wanted.get());
    FcResult result = FcResultMatch;
    const FontPattern found(FcFontMatch(nullptr, wanted.get(), &result));
    FcChar8* family = nullptr;
    int version = 0;
    if (!found || FcPatternGetString(found.get(), FC_FAMILY, 0, &family) != FcResultMatch) {
        return "no font";
    }
    std::string name = reinterpret_cast<const char*>(family);
    if (FcPatternGetInteger(found.get(), FC_FONTVERSION, 0, &version) != FcResultMatch) {
        return name;
    }
    return fmt::format("{} {:.3f}", name, version / 65536.0);  // whole and fraction, 16 bits each
}

int letters_without_shape(std::string_view text) {
    if (in_the_house_font(text)) {
        return 0;
    }
    const CairoSurface surface(cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, nullptr));
    const CairoContext context(cairo_create(surface.get()));
    const TextLayout layout = text_layout(context.get());
    set_text(layout.get(), text, 10, false);
    return pango_layout_get_unknown_glyphs_count(layout.get());
}

}  // namespace tracewright
