#pragma once

#include "serve/reply.hpp"
#include "serve/route.hpp"

namespace tracewright {

// Photos of meals, for the diary's table of routes.

/// Which there are.
Reply photos_reply(Asked& asked);
/// One of them, as a JPEG.
Reply photo_reply(Asked& asked);
/// The bytes of a file as a photo of a meal.
Reply add_photo_reply(Asked& asked);
/// Removes one for good.
Reply remove_photo_reply(Asked& asked);

}  // namespace tracewright
