#include "access/session_book.hpp"

#include "access/sealing.hpp"

#include <sodium.h>

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

constexpr std::size_t secret_digits = 64;

std::string hash_of(std::string_view secret) {
    std::string hash(crypto_generichash_BYTES, '\0');
    crypto_generichash(reinterpret_cast<unsigned char*>(hash.data()), hash.size(),
                       reinterpret_cast<const unsigned char*>(secret.data()), secret.size(),
                       nullptr, 0);
    return hash;
}

}  // namespace

std::string drawn_secret() {
    const SecretKey drawn = SecretKey::drawn();
    std::array<char, secret_digits + 1> hex{};
    sodium_bin2hex(hex.data(), hex.size(), drawn.view().data(), drawn.view().size());
    return {hex.data(), secret_digits};
}

bool same_secret(std::string_view a, std::string_view b) {
    return a.size() == b.size() && sodium_memcmp(a.data(), b.data(), a.size()) == 0;
}

bool SessionBook::ended(const Held& held, Tick now) const {
    return now - held.last_sign >= times_.idle || now - held.opened >= times_.whole;
}

SessionBook::Held* SessionBook::held(std::uint64_t number) {
    const auto found = std::ranges::find_if(
        sessions_, [&](const auto& one) { return one.second.session.number == number; });
    return found == sessions_.end() ? nullptr : &found->second;
}

SessionBook::Opened SessionBook::open(std::int64_t coach, Tick now) {
    const std::scoped_lock lock(mutex_);
    std::erase_if(sessions_, [&](const auto& one) { return ended(one.second, now); });
    std::vector<std::map<std::string, Held, std::less<>>::iterator> own;
    for (auto it = sessions_.begin(); it != sessions_.end(); ++it) {
        if (it->second.session.coach == coach) {
            own.push_back(it);
        }
    }
    if (own.size() >= times_.most_of_one_coach) {
        sessions_.erase(*std::ranges::min_element(
            own, {}, [](const auto& it) { return it->second.session.number; }));
    }
    Opened opened{drawn_secret(), {++last_number_, coach, drawn_secret()}};
    sessions_.emplace(hash_of(opened.secret), Held{opened.session, now, now, {}});
    return opened;
}

std::optional<Session> SessionBook::of(std::string_view secret, Tick now) {
    if (secret.size() != secret_digits) {
        return std::nullopt;
    }
    const std::string hash = hash_of(secret);
    const std::scoped_lock lock(mutex_);
    const auto found = sessions_.find(hash);
    if (found == sessions_.end()) {
        return std::nullopt;
    }
    if (ended(found->second, now)) {
        sessions_.erase(found);
        return std::nullopt;
    }
    found->second.last_sign = now;
    return found->second.session;
}

bool SessionBook::lasts(std::uint64_t number, Tick now) {
    const std::scoped_lock lock(mutex_);
    const Held* one = held(number);
    return one != nullptr && !ended(*one, now);
}

void SessionBook::close(std::uint64_t number) {
    const std::scoped_lock lock(mutex_);
    std::erase_if(sessions_, [&](const auto& one) { return one.second.session.number == number; });
}

bool SessionBook::has_looked(std::uint64_t number, const std::string& what) {
    const std::scoped_lock lock(mutex_);
    const Held* one = held(number);
    return one != nullptr && one->looks.contains(what);
}

void SessionBook::looked(std::uint64_t number, const std::string& what) {
    const std::scoped_lock lock(mutex_);
    if (Held* one = held(number)) {
        one->looks.insert(what);
    }
}

void SessionBook::forget_looks_at(const std::string& client) {
    const std::scoped_lock lock(mutex_);
    for (auto& [secret, one] : sessions_) {
        std::erase_if(one.looks, [of = " " + client + " "](const std::string& look) {
            return look.find(of) != std::string::npos;
        });
    }
}

}  // namespace tracewright
