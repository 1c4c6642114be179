#include "cli/command.hpp"

#include <unistd.h>

#include <chrono>
#include <iostream>

int main(int argc, char** argv) {
    const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    const tracewright::Streams streams{std::cout, std::cerr, ::isatty(STDERR_FILENO) == 1, now};
    return static_cast<int>(
        tracewright::run_command(std::vector<std::string>(argv + 1, argv + argc), streams));
}
