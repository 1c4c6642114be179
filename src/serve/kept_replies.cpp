#include "serve/kept_replies.hpp"

namespace tracewright {

namespace {

constexpr std::size_t of_each = 512;  // what an entry costs besides its body

std::size_t bytes_of(const Reply& reply) {
    return (reply.body ? reply.body->size() : 0) + of_each;
}

}  // namespace

std::uint64_t ChangeBook::version_of(const std::string& client) {
    const std::scoped_lock lock(mutex_);
    const auto found = of_.find(client);
    return all_ + (found == of_.end() ? 0 : found->second);
}

void ChangeBook::changed(const std::string& client) {
    const std::scoped_lock lock(mutex_);
    ++of_[client];
}

void ChangeBook::all_changed() {
    const std::scoped_lock lock(mutex_);
    ++all_;
}

std::optional<Reply> KeptReplies::of(const std::string& what, std::uint64_t version) {
    const std::scoped_lock lock(mutex_);
    const auto found = place_of_.find(what);
    if (found == place_of_.end()) {
        return std::nullopt;
    }
    if (found->second->version != version) {
        drop(found->second);
        return std::nullopt;
    }
    kept_.splice(kept_.begin(), kept_, found->second);
    return found->second->reply;
}

void KeptReplies::keep(const std::string& what, std::uint64_t version, const Reply& reply) {
    const std::scoped_lock lock(mutex_);
    if (const auto found = place_of_.find(what); found != place_of_.end()) {
        drop(found->second);
    }
    kept_.push_front({what, version, reply});
    place_of_.emplace(what, kept_.begin());
    bytes_ += bytes_of(reply);
    while (bytes_ > most_bytes_ && !kept_.empty()) {
        drop(std::prev(kept_.end()));
    }
}

void KeptReplies::forget_all() {
    const std::scoped_lock lock(mutex_);
    kept_.clear();
    place_of_.clear();
    bytes_ = 0;
}

void KeptReplies::drop(Place place) {
    bytes_ -= bytes_of(place->reply);
    place_of_.erase(place->what);
    kept_.erase(place);
}

}  // namespace tracewright
