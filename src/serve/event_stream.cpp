#include "serve/event_stream.hpp"

namespace tracewright {

void EventStream::on_wake(std::function<void()> wake) {
    const std::scoped_lock lock(mutex_);
    wake_ = std::move(wake);
    if (wake_ && (ended_ || !waiting_.empty())) {
        wake_();
    }
}

void EventStream::push(const Frame& frame) {
    const std::scoped_lock lock(mutex_);
    if (ended_) {
        return;
    }
    if (waiting_.size() >= most_waiting) {
        ended_ = true;
        waiting_.clear();
    } else {
        waiting_.push_back(frame);
    }
    if (wake_) {
        wake_();
    }
}

void EventStream::end() {
    const std::scoped_lock lock(mutex_);
    ended_ = true;
    if (wake_) {
        wake_();
    }
}

bool EventStream::ended() {
    const std::scoped_lock lock(mutex_);
    return ended_;
}

std::vector<Frame> EventStream::take() {
    const std::scoped_lock lock(mutex_);
    std::vector<Frame> frames(waiting_.begin(), waiting_.end());
    waiting_.clear();
    return frames;
}

std::shared_ptr<EventStream> EventHub::open(std::uint64_t session) {
    auto stream = std::make_shared<EventStream>(session);
    // The page asks again after 3 s where the stream broke off.
    stream->push(std::make_shared<const std::string>("retry: 3000\n: here\n\n"));
    const std::scoped_lock lock(mutex_);
    streams_.push_back(stream);
    return stream;
}

std::vector<std::shared_ptr<EventStream>> EventHub::streams() {
    const std::scoped_lock lock(mutex_);
    std::vector<std::shared_ptr<EventStream>> open;
    open.reserve(streams_.size());
    std::erase_if(streams_, [&](const std::weak_ptr<EventStream>& weak) {
        auto stream = weak.lock();
        if (!stream) {
            return true;
        }
        open.push_back(std::move(stream));
        return false;
    });
    return open;
}

void EventHub::push(const Frame& frame) {
    for (const auto& stream : streams()) {
        stream->push(frame);
    }
}

void EventHub::tell(const std::string& event, const std::string& data) {
    push(std::make_shared<const std::string>("event: " + event + "\ndata: " + data + "\n\n"));
}

void EventHub::beat() {
    push(std::make_shared<const std::string>(": still here\n\n"));
}

void EventHub::end_unless(const std::function<bool(std::uint64_t)>& lasts) {
    for (const auto& stream : streams()) {
        if (!lasts(stream->session())) {
            stream->end();
        }
    }
}

void EventHub::end_all() {
    end_unless([](std::uint64_t) { return false; });
}

std::size_t EventHub::listeners() {
    return streams().size();
}

}  // namespace tracewright
