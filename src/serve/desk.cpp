#include "serve/desk.hpp"

#include <exception>

namespace tracewright {

Desk::Desk(std::size_t threads, std::size_t most_waiting) : most_waiting_(most_waiting) {
    for (std::size_t i = 0; i < threads; ++i) {
        threads_.emplace_back([this, i] { work(i); });
    }
}

Desk::~Desk() {
    stop();
}

bool Desk::give(Task task, Failed failed) {
    {
        const std::scoped_lock lock(mutex_);
        if (stopped_ || waiting_.size() >= most_waiting_) {
            return false;
        }
        waiting_.push_back({std::move(task), std::move(failed)});
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
        Given given;
        {
            std::unique_lock lock(mutex_);
            bell_.wait(lock, [this] { return stopped_ || !waiting_.empty(); });
            if (stopped_) {
                return;
            }
            given = std::move(waiting_.front());
            waiting_.pop_front();
        }
        do_one(given, thread);
    }
}

void Desk::do_one(const Given& given, std::size_t thread) {
    try {
        given.task(thread);
    } catch (const std::exception&) {
        given.failed();
    }
}

}  // namespace tracewright
