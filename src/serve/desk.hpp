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
    /// What is done in place of the rest of a task that threw.
    using Failed = std::function<void()>;

    Desk(std::size_t threads, std::size_t most_waiting);
    ~Desk();
    Desk(const Desk&) = delete;
    Desk& operator=(const Desk&) = delete;

    /// False where too much waits already, or after `stop`: nothing is done then.
    /// A task that throws ends alone: the thread goes on with the next.
    bool give(Task task, Failed failed);
    /// Does what was begun, forgets what waits.
    void stop();

  private:
    struct Given {
        Task task;
        Failed failed;
    };
    void work(std::size_t thread);
    static void do_one(const Given& given, std::size_t thread);

    std::size_t most_waiting_;
    std::mutex mutex_;
    std::condition_variable bell_;
    std::deque<Given> waiting_;
    bool stopped_ = false;
    std::vector<std::jthread> threads_;
};

}  // namespace tracewright
