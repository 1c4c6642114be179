#pragma once

#include <cstddef>
#include <functional>

namespace tracewright {

/// Calls `work(0)` to `work(count - 1)`, each once, several at a time, and returns when all are
/// done.
///
/// `jobs` is the number of threads; 0 or less: as many as the machine has. Never more than `count`;
/// one thread is the calling one, so that one job starts none. Each thread takes the next number
/// not yet taken: the order of the calls is open, so the work of one number must not need another's
/// and writes to a place of its own. What the work throws ends the numbers not yet begun and is
/// thrown on, the first one only.
void side_by_side(std::size_t count, int jobs, const std::function<void(std::size_t)>& work);

}  // namespace tracewright
