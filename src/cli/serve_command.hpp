#pragma once

#include "cli/practice_options.hpp"
#include "cli/streams.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace tracewright {

/// Where the practice is served, as typed.
struct ServeWords {
    std::string address = "127.0.0.1";
    std::uint16_t port = 8417;
    std::vector<std::string> names;
    std::string certificate;
    std::string key;
};

/// Serves the practice to a browser until it is told to stop (SIGINT, SIGTERM). Says where it is on
/// streams.out. The practice is opened by the options' passphrase or recovery key where one is
/// given, else by the first who signs in.
Exit serve(const PracticeOptions& options, const ServeWords& words, const Streams& streams);

}  // namespace tracewright
