#pragma once

#include "cli/file_options.hpp"
#include "cli/practice_options.hpp"
#include "coaching/client_facts.hpp"
#include "diary/client_foods.hpp"

namespace tracewright {

/// What a practice holds of one client, ready to be asked.
struct ClientOfPractice {
    ReviewInput input;
    ClientFacts facts;
    ClientFoods foods;  ///< corrections, recipes and usual foods
    OpenClient open;    ///< for what is kept afterwards
};

/// All wears of the client that `files` names unless a window is asked for. `looked`: what the
/// audit notes; `tells`: whether a positive or open eating screen is said on streams.out. Error:
/// the exit code, its sentence said.
tl::expected<ClientOfPractice, Exit> client_of_practice(const PracticeOptions& options,
                                                        const FileOptions& files,
                                                        const char* looked, bool tells,
                                                        const Streams& streams);

}  // namespace tracewright
