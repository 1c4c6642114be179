#include "serve/desk.hpp"

namespace tracewright {

Desk::Desk(std::size_t threads, std::size_t most_waiting) : most_waiting_(most_waiting) {
    for (std::size_t i = 0; i < threads; ++i) {
        threads_.emplace_back([this, i] { work(i); });
    }
}

Desk::~Desk() {
    stop();
}

bool Desk::give(Task task) {
    {
        const std::scoped_lock lock(mutex_);
        if (stopped_ || waiting_.size() >= most_waiting_) {
            return false;
        }
        waiting_.push_back(std::move(task));
    }
    bell_.notify_one();
    return true;
}

void Desk::stop() {
    {
        const std::scoped_lock lock(mutex_);
        stopped_ = true;
        waiting_.clear();
    }
    bell_.notify_all();
    threads_.clear();
}

void Desk::work(std::size_t thread) {
    for (;;) {
        Task task;
        {
            std::unique_lock lock(mutex_);
            bell_.wait(lock, [this] { return stopped_ || !waiting_.empty(); });
            if (stopped_) {
                return;
            }
            task = std::move(waiting_.front());
            waiting_.pop_front();
        }
        task(thread);
    }
}

}  // namespace tracewright
