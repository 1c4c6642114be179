#pragma once

#include <cstdint>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

namespace tracewright {

using Frame = std::shared_ptr<const std::string>;

/// One open stream of events. A listener who takes nothing for `most_waiting` frames is dropped:
/// the page comes back by itself and reads everything anew. For several threads.
class EventStream {
  public:
    static constexpr std::size_t most_waiting = 64;

    explicit EventStream(std::uint64_t session) : session_(session) {}

    std::uint64_t session() const { return session_; }
    /// `wake` is called, from any thread, whenever there is something to take or the stream ended.
    void on_wake(std::function<void()> wake);
    void push(const Frame& frame);
    void end();
    bool ended();
    std::vector<Frame> take();

  private:
    std::uint64_t session_;
    std::mutex mutex_;
    std::deque<Frame> waiting_;
    std::function<void()> wake_;
    bool ended_ = false;
};

/// All open streams.
class EventHub {
  public:
    std::shared_ptr<EventStream> open(std::uint64_t session);
    void tell(const std::string& event, const std::string& data);
    /// A comment line to each, so that who went away is noticed.
    void beat();
    /// Ends those of sessions for which `lasts` is false.
    void end_unless(const std::function<bool(std::uint64_t)>& lasts);
    void end_all();
    std::size_t listeners();

  private:
    void push(const Frame& frame);
    std::vector<std::shared_ptr<EventStream>> streams();

    std::mutex mutex_;
    std::vector<std::weak_ptr<EventStream>> streams_;
};

}  // namespace tracewright
