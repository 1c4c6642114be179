#pragma once

#include "coaching/shared_page.hpp"

#include <string>

namespace tracewright {

/// A shared page as one self-contained document: no script, nothing fetched, readable on a phone.
std::string shared_page_html(const SharedPage& page);

}  // namespace tracewright
