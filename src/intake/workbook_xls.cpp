#include "intake/workbook.hpp"

#include <freexl.h>
#include <sys/mman.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <charconv>
#include <csignal>
#include <cstring>

namespace tracewright {

namespace {

constexpr unsigned seconds_allowed = 20;
constexpr std::size_t most_answer = std::size_t{1} << 29;

FileError broken(const std::string& name, std::string found) {
    return {FileErrorKind::broken_workbook,
            name,
            0,
            0,
            std::move(found),
            "a whole .xls workbook",
            "save it again as .xlsx or as comma-separated text"};
}

class Descriptor {
  public:
    explicit Descriptor(int fd) : fd_(fd) {}
    ~Descriptor() { close_now(); }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    int get() const { return fd_; }
    void close_now() {
        if (fd_ >= 0) {
            ::close(fd_);
            fd_ = -1;
        }
    }

  private:
    int fd_;
};

bool write_all(int fd, const void* data, std::size_t size) {
    const char* at = static_cast<const char*>(data);
    while (size > 0) {
        const ssize_t done = ::write(fd, at, size);
        if (done <= 0) {
            return false;
        }
        at += done;
        size -= static_cast<std::size_t>(done);
    }
    return true;
}

// What the child tells the parent: a tag, then sizes and bytes.
class Teller {
  public:
    void byte(char c) { told_ += c; }
    void number(std::uint32_t n) { told_.append(reinterpret_cast<const char*>(&n), sizeof n); }
    void text(std::string_view t) {
        number(static_cast<std::uint32_t>(t.size()));
        told_ += t;
    }
    const std::string& told() const { return told_; }

  private:
    std::string told_;
};

class Listener {
  public:
    explicit Listener(std::string_view told) : told_(told) {}
    bool byte(char& c) {
        if (told_.empty()) {
            return false;
        }
        c = told_.front();
        told_.remove_prefix(1);
        return true;
    }
    bool number(std::uint32_t& n) {
        if (told_.size() < sizeof n) {
            return false;
        }
        std::memcpy(&n, told_.data(), sizeof n);
        told_.remove_prefix(sizeof n);
        return true;
    }
    bool text(std::string& t) {
        std::uint32_t size = 0;
        if (!number(size) || told_.size() < size) {
            return false;
        }
        t.assign(told_.substr(0, size));
        told_.remove_prefix(size);
        return true;
    }

  private:
    std::string_view told_;
};

std::string shortest(double value) {
    std::array<char, 64> buffer{};
    const auto [last, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
    return error == std::errc{} ? std::string(buffer.data(), last) : std::string();
}

void tell_cell(Teller& teller, std::uint32_t column, CellForm form, std::string_view text) {
    teller.byte('c');
    teller.number(column);
    teller.byte(static_cast<char>(form));
    teller.text(text);
}

void tell_value(Teller& teller, std::uint32_t column, const FreeXL_CellValue& value) {
    switch (value.type) {
        case FREEXL_CELL_INT:
            tell_cell(teller, column, CellForm::number, std::to_string(value.value.int_value));
            break;
        case FREEXL_CELL_DOUBLE:
            tell_cell(teller, column, CellForm::number, shortest(value.value.double_value));
            break;
        case FREEXL_CELL_TEXT:
        case FREEXL_CELL_SST_TEXT:
        case FREEXL_CELL_DATE:
        case FREEXL_CELL_DATETIME:
        case FREEXL_CELL_TIME:
            if (value.value.text_value != nullptr && value.value.text_value[0] != '\0') {
                const std::string_view text = value.value.text_value;
                const bool error = text.starts_with('#') && text.ends_with('!');
                tell_cell(teller, column, error ? CellForm::error : CellForm::text, text);
            }
            break;
        default:
            break;
    }
}

void tell_sheet(Teller& teller, const void* handle, unsigned short sheet) {
    const char* name = nullptr;
    unsigned rows = 0;
    unsigned short columns = 0;
    freexl_get_worksheet_name(handle, sheet, &name);
    teller.byte('s');
    teller.text(name != nullptr ? name : "");
    if (freexl_select_active_worksheet(handle, sheet) != FREEXL_OK ||
        freexl_worksheet_dimensions(handle, &rows, &columns) != FREEXL_OK) {
        return;
    }
    for (unsigned r = 0; r < rows; ++r) {
        teller.byte('r');
        teller.number(r + 1);
        for (unsigned short c = 0; c < columns; ++c) {
            FreeXL_CellValue value;
            if (freexl_get_cell_value(handle, r, c, &value) == FREEXL_OK) {
                tell_value(teller, c + 1U, value);
            }
        }
    }
}

// In the child: never returns.
[[noreturn]] void read_and_tell(const char* path, int answer) {
#if !defined(__SANITIZE_ADDRESS__) && !defined(TRACEWRIGHT_SANITIZED)
    // A sanitizer's own shadow needs more than any limit of ours.
    constexpr rlim_t memory_allowed = rlim_t{1} << 30;
    const rlimit memory{memory_allowed, memory_allowed};
    ::setrlimit(RLIMIT_AS, &memory);
#endif
    const rlimit no_core{0, 0};
    ::setrlimit(RLIMIT_CORE, &no_core);
    // A crash here ends this child and nothing else: nobody's handler is to look at it.
    for (const int signal : {SIGALRM, SIGSEGV, SIGBUS, SIGABRT, SIGFPE, SIGILL, SIGTERM}) {
        ::signal(signal, SIG_DFL);
    }
    ::alarm(seconds_allowed);
    const void* handle = nullptr;
    Teller teller;
    bool ok = freexl_open(path, &handle) == FREEXL_OK;
    if (ok) {
        unsigned count = 0;
        unsigned mode = FREEXL_BIFF_DATEMODE_1900;
        freexl_get_info(handle, FREEXL_BIFF_SHEET_COUNT, &count);
        freexl_get_info(handle, FREEXL_BIFF_DATEMODE, &mode);
        teller.byte('m');
        teller.number(mode == FREEXL_BIFF_DATEMODE_1904 ? 1 : 0);
        for (unsigned s = 0; s < count && s < 1000; ++s) {
            tell_sheet(teller, handle, static_cast<unsigned short>(s));
        }
        teller.byte('e');
    }
    ok = ok && write_all(answer, teller.told().data(), teller.told().size());
    ::_exit(ok ? 0 : 1);
}

std::string answer_of(int fd) {
    std::string answer;
    std::array<char, 65536> buffer{};
    for (ssize_t got = 0;
         (got = ::read(fd, buffer.data(), buffer.size())) > 0 && answer.size() < most_answer;) {
        answer.append(buffer.data(), static_cast<std::size_t>(got));
    }
    return answer;
}

std::optional<Workbook> heard(std::string_view answer) {
    Workbook workbook{"xls workbook", {}, false};
    Listener listener(answer);
    for (char tag = 0; listener.byte(tag);) {
        std::uint32_t number = 0;
        SheetCell cell;
        char form = 0;
        switch (tag) {
            case 'm':
                if (!listener.number(number)) {
                    return std::nullopt;
                }
                workbook.serial_1904 = number == 1;
                break;
            case 's':
                workbook.sheets.emplace_back();
                if (!listener.text(workbook.sheets.back().name)) {
                    return std::nullopt;
                }
                break;
            case 'r':
                if (workbook.sheets.empty() || !listener.number(number)) {
                    return std::nullopt;
                }
                workbook.sheets.back().rows.push_back({number, {}});
                break;
            case 'c':
                if (workbook.sheets.empty() || workbook.sheets.back().rows.empty() ||
                    !listener.number(cell.column) || !listener.byte(form) ||
                    !listener.text(cell.text)) {
                    return std::nullopt;
                }
                cell.form = static_cast<CellForm>(form);
                workbook.sheets.back().rows.back().cells.push_back(std::move(cell));
                break;
            case 'e':
                return workbook;
            default:
                return std::nullopt;
        }
    }
    return std::nullopt;  // cut short
}

}  // namespace

tl::expected<Workbook, FileError> xls_workbook(std::string_view bytes, const std::string& name) {
    const Descriptor file(::memfd_create("workbook", 0));
    std::array<int, 2> ends{-1, -1};
    if (file.get() < 0 || !write_all(file.get(), bytes.data(), bytes.size()) ||
        ::pipe(ends.data()) != 0) {
        return tl::make_unexpected(broken(name, "no room to read it"));
    }
    Descriptor read_end(ends[0]);
    Descriptor write_end(ends[1]);
    const std::string path = "/proc/self/fd/" + std::to_string(file.get());
    const pid_t child = ::fork();
    if (child == 0) {
        read_and_tell(path.c_str(), write_end.get());
    }
    write_end.close_now();
    if (child < 0) {
        return tl::make_unexpected(broken(name, "no process to read it with"));
    }
    const std::string answer = answer_of(read_end.get());
    read_end.close_now();
    int status = 0;
    ::waitpid(child, &status, 0);
    const auto workbook =
        WIFEXITED(status) && WEXITSTATUS(status) == 0 ? heard(answer) : std::nullopt;
    if (!workbook) {
        return tl::make_unexpected(broken(name, "a workbook that can't be read to its end"));
    }
    return *workbook;
}

}  // namespace tracewright
