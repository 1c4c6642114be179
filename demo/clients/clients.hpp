#pragma once

#include "../client_story.hpp"

namespace tracewright {

/// A client with what all of them share: foods, Berlin, no planted effect.
ClientStory plain_client(const std::string& key, const std::string& tree);

ClientStory client_alder();   ///< fasting follows late dinner
ClientStory client_aspen();   ///< another sensor kind between wears; metformin raised
ClientStory client_birch();   ///< one food is followed by a high rise
ClientStory client_cedar();   ///< a trip across zones; an unrecognised medicine
ClientStory client_elder();   ///< a path to the remission criteria
ClientStory client_hazel();   ///< a walk after dinner helps
ClientStory client_larch();   ///< a poor diary; a sensor that fell off
ClientStory client_linden();  ///< fasting follows short sleep; pressure dips
ClientStory client_maple();   ///< night lows on a sulfonylurea
ClientStory client_rowan();   ///< late dinner and short sleep travel together
ClientStory client_willow();  ///< the clocks change; eating screen unanswered
ClientStory client_yarrow();  ///< nothing is planted

}  // namespace tracewright
