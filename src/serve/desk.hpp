#pragma once

#include <condition_variable>
#include <cstddef>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

namespace tracewright {

/// Threads that do one task after the other, each thread with its number (and so its own store).
class Desk {
  public:
    using Task = std::function<void(std::size_t thread)>;

    Desk(std::size_t threads, std::size_t most_waiting);
    ~Desk();
    Desk(const Desk&) = delete;
    Desk& operator=(const Desk&) = delete;

    /// False where too much waits already, or after `stop`: nothing is done then.
    bool give(Task task);
    /// Does what was begun, forgets what waits.
    void stop();

  private:
    void work(std::size_t thread);

    std::size_t most_waiting_;
    std::mutex mutex_;
    std::condition_variable bell_;
    std::deque<Task> waiting_;
    bool stopped_ = false;
    std::vector<std::jthread> threads_;
};

}  // namespace tracewright
