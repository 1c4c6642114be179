#include "store/trace_block.hpp"

#include <sodium.h>
#include <zstd.h>

#include <algorithm>
#include <array>
#include <memory>
#include <new>
#include <stdexcept>

namespace tracewright {

namespace {

constexpr std::uint8_t version = 1;
constexpr int level = 1;  // as small as level 3 on a day's planes, and quicker
constexpr std::int64_t seconds_a_day = 86'400;

// What stands before the planes, each number little-endian.
struct Head {
    std::uint32_t day = 0;
    std::uint32_t count = 0;
    std::uint32_t divisor = 1;  // of all values: what a whole step of the scale is
    std::uint32_t first_second = 0;
    std::uint32_t first_value = 0;
    std::uint32_t first_interval = 0;
    std::uint32_t first_flags = 0;
    std::uint32_t planes = 0;  // bit n: plane n follows; else it is all zero
};
constexpr std::size_t head_bytes = 8 * 4;

// The columns' low bytes, next bytes and so on each make a plane: bytes that mostly are zero stand
// together, and a plane of zeros is left out.
constexpr std::size_t step_plane = 0;      // 3: change of the step in time
constexpr std::size_t value_plane = 3;     // 4: change of value, in divisors
constexpr std::size_t interval_plane = 7;  // 2: change of the sensor's interval, without sign
constexpr std::size_t flag_plane = 9;      // 1: flags, against the first reading's
constexpr std::size_t planes_in_all = 10;
constexpr std::size_t most_bytes =
    head_bytes + planes_in_all * static_cast<std::size_t>(seconds_a_day);

struct FreeCompressor {
    void operator()(ZSTD_CCtx* context) const { ZSTD_freeCCtx(context); }
};
struct FreeDecompressor {
    void operator()(ZSTD_DCtx* context) const { ZSTD_freeDCtx(context); }
};

// Contexts are dear to make and hold no state from one block to the next.
ZSTD_CCtx* compressor() {
    thread_local const std::unique_ptr<ZSTD_CCtx, FreeCompressor> context = [] {
        std::unique_ptr<ZSTD_CCtx, FreeCompressor> made{ZSTD_createCCtx()};
        if (!made) {
            throw std::bad_alloc();
        }
        ZSTD_CCtx_setParameter(made.get(), ZSTD_c_compressionLevel, level);
        return made;
    }();
    return context.get();
}

ZSTD_DCtx* decompressor() {
    thread_local const std::unique_ptr<ZSTD_DCtx, FreeDecompressor> context{ZSTD_createDCtx()};
    if (!context) {
        throw std::bad_alloc();
    }
    return context.get();
}

std::uint32_t zigzag(std::int32_t number) {
    return (static_cast<std::uint32_t>(number) << 1U) ^ static_cast<std::uint32_t>(number >> 31);
}

std::int32_t unzigzag(std::uint32_t number) {
    return static_cast<std::int32_t>((number >> 1U) ^ (~(number & 1U) + 1U));
}

std::uint32_t flags_of(const Reading& reading) {
    return static_cast<std::uint32_t>(reading.unit()) |
           (static_cast<std::uint32_t>(reading.limit()) << 1U) | (reading.implausible() ? 8U : 0U);
}

std::uint32_t interval_of(const Reading& reading) {
    return static_cast<std::uint32_t>(reading.interval().count());
}

void put_u32(std::uint8_t*& at, std::uint32_t number) {
    for (unsigned b = 0; b < 4; ++b) {
        *at++ = static_cast<std::uint8_t>(number >> (8 * b));
    }
}

std::uint32_t take_u32(const std::uint8_t*& at) {
    std::uint32_t number = 0;
    for (unsigned b = 0; b < 4; ++b) {
        number |= static_cast<std::uint32_t>(*at++) << (8 * b);
    }
    return number;
}

void put(std::uint8_t* at, const Head& head) {
    for (const std::uint32_t number :
         {head.day, head.count, head.divisor, head.first_second, head.first_value,
          head.first_interval, head.first_flags, head.planes}) {
        put_u32(at, number);
    }
}

Head head_at(const std::uint8_t* at) {
    Head head;
    for (std::uint32_t* number :
         {&head.day, &head.count, &head.divisor, &head.first_second, &head.first_value,
          &head.first_interval, &head.first_flags, &head.planes}) {
        *number = take_u32(at);
    }
    return head;
}

std::uint32_t day_number(UtcDay day) {
    return static_cast<std::uint32_t>(day.time_since_epoch().count());
}

// What a whole step of the scale is: 1 mg/dL, 0.1 mmol/L, or the hundredths themselves.
std::int32_t divisor_of(std::span<const Reading> readings) {
    for (const std::int32_t divisor : {100, 10}) {
        if (std::ranges::all_of(readings, [=](const Reading& reading) {
                return reading.hundredths() % divisor == 0;
            })) {
            return divisor;
        }
    }
    return 1;
}

// All planes of the day one behind the other, `count` bytes each, in `planes`.
void fill_planes(UtcDay day, std::span<const Reading> readings, std::int32_t divisor,
                 std::span<std::uint8_t> planes) {
    const std::size_t count = readings.size();
    const auto set = [&](std::size_t plane, std::size_t row, std::uint32_t number) {
        for (; number != 0; number >>= 8U, ++plane) {
            planes[plane * count + row] = static_cast<std::uint8_t>(number);
        }
    };
    const Reading& first = readings.front();
    std::int64_t second = (first.at - day).count();
    auto step = static_cast<std::int64_t>(interval_of(first));
    auto value = static_cast<std::uint32_t>(first.hundredths() / divisor);
    std::uint32_t interval = interval_of(first);
    if (second < 0 || second >= seconds_a_day) {
        throw std::invalid_argument("readings of a block must lie within its day");
    }
    for (std::size_t i = 1; i < count; ++i) {
        const Reading& reading = readings[i];
        const std::int64_t at = (reading.at - day).count();
        if (at <= second || at >= seconds_a_day) {
            throw std::invalid_argument("readings of a block must ascend within its day");
        }
        set(step_plane, i, zigzag(static_cast<std::int32_t>(at - second - step)));
        const auto next_value = static_cast<std::uint32_t>(reading.hundredths() / divisor);
        set(value_plane, i, zigzag(static_cast<std::int32_t>(next_value - value)));
        set(interval_plane, i, (interval_of(reading) - interval) & 0xFFFFU);
        set(flag_plane, i, flags_of(reading) ^ flags_of(first));
        step = at - second;
        second = at;
        value = next_value;
        interval = interval_of(reading);
    }
}

// Over version and frame: zstd's own checksum leaves bits of its header out.
constexpr std::size_t checksum_bytes = 4;

std::array<std::uint8_t, checksum_bytes> checksum_of(std::span<const std::uint8_t> bytes) {
    std::array<std::uint8_t, crypto_generichash_BYTES_MIN> hash{};
    crypto_generichash(hash.data(), hash.size(), bytes.data(), bytes.size(), nullptr, 0);
    std::array<std::uint8_t, checksum_bytes> checksum{};
    std::copy_n(hash.begin(), checksum_bytes, checksum.begin());
    return checksum;
}

tl::unexpected<std::string> broken(const char* what) {
    return tl::make_unexpected(std::string("found a block of readings that ") + what +
                               ", expected one as it was written");
}

tl::expected<std::span<const std::uint8_t>, std::string> unpacked(
    std::span<const std::uint8_t> block) {
    thread_local Bytes bytes;
    if (block.size() < 1 + checksum_bytes || block[0] != version) {
        return broken("is of an unknown version");
    }
    const auto checked = block.first(block.size() - checksum_bytes);
    if (!std::ranges::equal(checksum_of(checked), block.last(checksum_bytes))) {
        return broken("fails its checksum");
    }
    const auto frame = checked.subspan(1);
    const auto size = ZSTD_getFrameContentSize(frame.data(), frame.size());
    if (size == ZSTD_CONTENTSIZE_ERROR || size == ZSTD_CONTENTSIZE_UNKNOWN || size > most_bytes ||
        size < head_bytes) {
        return broken("does not tell its size");
    }
    bytes.resize(size);
    const std::size_t got =
        ZSTD_decompressDCtx(decompressor(), bytes.data(), bytes.size(), frame.data(), frame.size());
    if (ZSTD_isError(got) != 0 || got != size) {
        return broken("does not unpack");
    }
    return std::span<const std::uint8_t>(bytes);
}

// One column's numbers out of its planes; planes that were left out are zeros.
class Column {
  public:
    Column(const Head& head, const std::uint8_t* planes, std::size_t first, std::size_t width,
           std::vector<std::uint32_t>& numbers)
        : present_((head.planes >> first & ((1U << width) - 1U)) != 0), numbers_(numbers) {
        if (!present_) {
            return;
        }
        numbers_.assign(head.count, 0);
        const auto before =
            static_cast<std::size_t>(__builtin_popcount(head.planes & ((1U << first) - 1U)));
        const std::uint8_t* plane = planes + before * head.count;
        for (std::size_t b = 0; b < width; ++b) {
            if ((head.planes >> (first + b) & 1U) == 0) {
                continue;
            }
            for (std::size_t i = 0; i < head.count; ++i) {
                numbers_[i] |= static_cast<std::uint32_t>(plane[i]) << (8 * b);
            }
            plane += head.count;
        }
    }
    std::uint32_t operator[](std::size_t row) const { return present_ ? numbers_[row] : 0; }

  private:
    bool present_;
    std::vector<std::uint32_t>& numbers_;
};

bool possible(std::int64_t second, std::int64_t hundredths, std::uint32_t flags) {
    return second >= 0 && second < seconds_a_day && hundredths >= INT32_MIN &&
           hundredths <= INT32_MAX && flags <= 15U && (flags >> 1U & 3U) <= 2U;
}

bool append_readings(const Head& head, const std::uint8_t* planes, UtcDay day,
                     std::vector<Reading>& readings) {
    thread_local std::array<std::vector<std::uint32_t>, 4> room;
    const Column steps(head, planes, step_plane, 3, room[0]);
    const Column values(head, planes, value_plane, 4, room[1]);
    const Column intervals(head, planes, interval_plane, 2, room[2]);
    const Column flag_changes(head, planes, flag_plane, 1, room[3]);
    std::int64_t second = head.first_second;
    std::int64_t step = head.first_interval;
    std::uint32_t value = head.first_value;
    std::uint32_t interval = head.first_interval;
    for (std::size_t i = 0; i < head.count; ++i) {
        if (i > 0) {
            step += unzigzag(steps[i]);
            if (step <= 0) {
                return false;
            }
            second += step;
            value += static_cast<std::uint32_t>(unzigzag(values[i]));
            interval = (interval + intervals[i]) & 0xFFFFU;
        }
        const std::uint32_t flags = head.first_flags ^ flag_changes[i];
        const std::int64_t hundredths =
            std::int64_t{static_cast<std::int32_t>(value)} * std::int64_t{head.divisor};
        if (!possible(second, hundredths, flags)) {
            return false;
        }
        readings.emplace_back(
            Instant{day} + std::chrono::seconds{second},
            Glucose{static_cast<std::int32_t>(hundredths), static_cast<GlucoseUnit>(flags & 1U)},
            std::chrono::seconds{interval}, static_cast<Limit>(flags >> 1U & 3U),
            (flags & 8U) != 0);
    }
    return true;
}

}  // namespace

Bytes trace_block(UtcDay day, std::span<const Reading> readings) {
    thread_local Bytes bytes;
    if (readings.empty()) {
        throw std::invalid_argument("a block holds at least one reading");
    }
    const std::size_t count = readings.size();
    const std::int32_t divisor = divisor_of(readings);
    bytes.assign(head_bytes + planes_in_all * count, 0);
    const std::span<std::uint8_t> planes = std::span(bytes).subspan(head_bytes);
    fill_planes(day, readings, divisor, planes);
    const Reading& first = readings.front();
    Head head{day_number(day),
              static_cast<std::uint32_t>(count),
              static_cast<std::uint32_t>(divisor),
              static_cast<std::uint32_t>((first.at - day).count()),
              static_cast<std::uint32_t>(first.hundredths() / divisor),
              interval_of(first),
              flags_of(first),
              0};
    std::size_t kept = 0;
    for (std::size_t plane = 0; plane < planes_in_all; ++plane) {
        const auto bytes_of_plane = planes.subspan(plane * count, count);
        if (std::ranges::any_of(bytes_of_plane, [](std::uint8_t byte) { return byte != 0; })) {
            head.planes |= 1U << plane;
            std::ranges::copy(bytes_of_plane, planes.begin() + static_cast<std::ptrdiff_t>(kept));
            kept += count;
        }
    }
    put(bytes.data(), head);
    Bytes block(1 + ZSTD_compressBound(head_bytes + kept) + checksum_bytes);
    block[0] = version;
    const std::size_t size =
        ZSTD_compress2(compressor(), block.data() + 1, block.size() - 1 - checksum_bytes,
                       bytes.data(), head_bytes + kept);
    if (ZSTD_isError(size) != 0) {
        throw std::runtime_error(ZSTD_getErrorName(size));
    }
    block.resize(1 + size);
    const auto checksum = checksum_of(block);
    block.insert(block.end(), checksum.begin(), checksum.end());
    return block;
}

tl::expected<void, std::string> unpack_trace_block(std::span<const std::uint8_t> block, UtcDay day,
                                                   std::vector<Reading>& readings) {
    const auto bytes = unpacked(block);
    if (!bytes) {
        return tl::make_unexpected(bytes.error());
    }
    const Head head = head_at(bytes->data());
    if (head.day != day_number(day)) {
        return broken("belongs to another day");
    }
    const auto planes = static_cast<std::size_t>(__builtin_popcount(head.planes));
    if (head.planes >> planes_in_all != 0 || head.count == 0 || head.divisor > INT32_MAX ||
        head.first_interval > 0xFFFFU || bytes->size() != head_bytes + planes * head.count ||
        head.count > seconds_a_day) {
        return broken("holds another number of readings than it says");
    }
    const std::size_t before = readings.size();
    if (!append_readings(head, bytes->data() + head_bytes, day, readings)) {
        readings.resize(before);
        return broken("holds readings that can't be");
    }
    return {};
}

}  // namespace tracewright
