#pragma once

#include "time/instant.hpp"

#include <array>
#include <bitset>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace tracewright {

/// A kind of data that a client may let another person see. Each is given by name; none brings
/// another with it.
enum class SharedKind : std::uint8_t {
    hours_in_range,
    lows,
    day_sheets,    ///< the trace of each day, with its numbers
    diary,         ///< what was eaten, moved, slept, in words
    food_amounts,  ///< energy and grams beside the diary's meals
    meal_photos,
    mood,
    notes,
    weight,
    medicines,
    letter
};

constexpr std::array every_shared_kind{
    SharedKind::hours_in_range, SharedKind::lows,        SharedKind::day_sheets, SharedKind::diary,
    SharedKind::food_amounts,   SharedKind::meal_photos, SharedKind::mood,       SharedKind::notes,
    SharedKind::weight,         SharedKind::medicines,   SharedKind::letter};

const char* name_of(SharedKind kind);
/// By its name, spaces or hyphens between the words ("day-sheets").
std::optional<SharedKind> shared_kind_called(std::string_view name);
/// As it stands in an address: "day-sheets".
std::string address_of(SharedKind kind);

/// Which kinds a share opens.
class SharedKinds {
  public:
    /// What a share opens where no kind is named: hours in range and lows.
    static SharedKinds usual();

    SharedKinds& add(SharedKind kind);
    bool has(SharedKind kind) const;
    bool none() const { return kinds_.none(); }
    bool operator==(const SharedKinds&) const = default;

  private:
    std::bitset<every_shared_kind.size()> kinds_;
};

/// Kinds by their names with commas between; the usual ones where the text is empty. Nothing where
/// a word is no kind.
std::optional<SharedKinds> kinds_in_text(std::string_view text);
/// "hours in range, lows".
std::string text_of(const SharedKinds& kinds);

/// A narrow view of one client that ends, given to one recipient.
struct Share {
    std::string client;     ///< the client's handle
    std::string recipient;  ///< "spouse", as the client says
    std::string purpose;
    SharedKinds kinds = SharedKinds::usual();
    std::chrono::days window{14};  ///< of data, back from the moment of looking
    Instant given_at;
    Instant until;  ///< the first moment at which it is closed
    std::optional<Instant> revoked_at;
};

/// Why this share can't be given, as a sentence; empty where it can: it needs a client, a
/// recipient, a purpose, one kind at least, a window of a day or more, and an end after its
/// beginning.
std::optional<std::string> what_a_share_lacks(const Share& share);

}  // namespace tracewright
