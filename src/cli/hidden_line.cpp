#include "cli/hidden_line.hpp"

#include <fcntl.h>
#include <termios.h>
#include <unistd.h>

namespace tracewright {

namespace {

/// The terminal with its echo off, as it was again when this goes.
class QuietTerminal {
  public:
    QuietTerminal() : terminal_(::open("/dev/tty", O_RDWR | O_CLOEXEC | O_NOCTTY)) {
        if (terminal_ < 0 || ::tcgetattr(terminal_, &before_) != 0) {
            return;
        }
        termios quiet = before_;
        quiet.c_lflag &= ~static_cast<tcflag_t>(ECHO);
        ready_ = ::tcsetattr(terminal_, TCSAFLUSH, &quiet) == 0;
    }
    ~QuietTerminal() {
        if (ready_) {
            ::tcsetattr(terminal_, TCSAFLUSH, &before_);
        }
        if (terminal_ >= 0) {
            ::close(terminal_);
        }
    }
    QuietTerminal(const QuietTerminal&) = delete;
    QuietTerminal& operator=(const QuietTerminal&) = delete;

    bool ready() const { return ready_; }
    void say(const std::string& text) const {
        [[maybe_unused]] const auto written = ::write(terminal_, text.data(), text.size());
    }
    std::string line() const {
        std::string line;
        char c = 0;
        while (::read(terminal_, &c, 1) == 1 && c != '\n') {
            line += c;
        }
        return line;
    }

  private:
    int terminal_;
    termios before_{};
    bool ready_ = false;
};

}  // namespace

tl::expected<std::string, std::string> hidden_line(const std::string& question) {
    const QuietTerminal terminal;
    if (!terminal.ready()) {
        return tl::make_unexpected(
            std::string("found no terminal to ask at, expected --passphrase-file FILE"));
    }
    terminal.say(question);
    std::string line = terminal.line();
    terminal.say("\n");
    if (line.empty()) {
        return tl::make_unexpected(std::string("found nothing typed; nothing was done"));
    }
    return line;
}

}  // namespace tracewright
