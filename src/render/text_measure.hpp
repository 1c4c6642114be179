#pragma once

#include "render/canvas.hpp"

#include <memory>
#include <string>
#include <string_view>

namespace tracewright {

/// Measures text as print sets it, for whoever has to place text without drawing it.
class TextMeasure {
  public:
    TextMeasure();
    ~TextMeasure();
    TextMeasure(const TextMeasure&) = delete;
    TextMeasure& operator=(const TextMeasure&) = delete;

    double width(std::string_view text, const TextStyle& style);

    /// `text` if it fits into `width`, else as much of it as fits with an ellipsis after it; never
    /// cut within a character. The ellipsis alone if nothing fits.
    std::string shortened(std::string_view text, double width, const TextStyle& style);

  private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

}  // namespace tracewright
