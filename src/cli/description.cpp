#include "cli/command_line.hpp"

#include <fmt/format.h>

namespace tracewright {

namespace {

std::string escaped(const std::string& text) {
    std::string result;
    for (const char c : text) {
        result += c == '-' ? "\\-" : c == '\\' ? "\\\\" : std::string(1, c);
    }
    return result;
}

bool shown(const CLI::Option* option) {
    return !option->get_group().empty();
}

std::string options_of(const CLI::App& app) {
    std::string text;
    for (const CLI::Option* option : app.get_options(shown)) {
        const bool positional = option->get_positional();
        const std::string name =
            positional ? option->get_name(true) : option->get_name(false, true);
        const bool takes_value = !positional && option->get_expected_min() > 0;
        text +=
            fmt::format(".TP\n.B {}{}\n{}\n", escaped(name), takes_value ? " \\fIVALUE\\fR" : "",
                        escaped(option->get_description()));
    }
    return text;
}

std::string words_of(const CLI::App& app) {
    std::string words;
    for (const CLI::Option* option : app.get_options(shown)) {
        if (!option->get_positional()) {
            for (const std::string& name : option->get_lnames()) {
                words += " --" + name;
            }
        }
    }
    return words;
}

bool any_subcommand(const CLI::App*) {
    return true;
}

}  // namespace

std::string man_page(const CLI::App& app) {
    std::string page =
        ".TH TRACEWRIGHT 1\n.SH NAME\ntracewright \\- a coach's workbench for glucose sensor "
        "wears and diaries\n.SH SYNOPSIS\n";
    const auto commands = app.get_subcommands(any_subcommand);
    for (const CLI::App* command : commands) {
        page +=
            fmt::format(".B tracewright {}\n.I FILE\n.RI [ options ]\n.br\n", command->get_name());
    }
    page +=
        ".SH DESCRIPTION\n" + escaped(app.get_description()) + "\n.SH OPTIONS\n" + options_of(app);
    for (const CLI::App* command : commands) {
        page += fmt::format(".SH {}\n{}\n{}", escaped("COMMAND " + command->get_name()),
                            escaped(command->get_description()), options_of(*command));
    }
    page +=
        ".SH EXIT STATUS\n.TP\n.B 0\ndone\n.TP\n.B 1\ncan't be answered: the data hold no answer, "
        "or a "
        "question must be answered first\n.TP\n.B 2\nwrong usage\n.TP\n.B 3\nbad input in any "
        "file; the "
        "others were still done\n";
    return page;
}

std::string bash_completion(const CLI::App& app) {
    std::string cases;
    std::string names;
    for (const CLI::App* command : app.get_subcommands(any_subcommand)) {
        names += (names.empty() ? "" : " ") + command->get_name();
        cases +=
            fmt::format("        {}) words=\"{}\" ;;\n", command->get_name(), words_of(*command));
    }
    return fmt::format(
        "_tracewright() {{\n"
        "    local current=\"${{COMP_WORDS[COMP_CWORD]}}\" words=\"\"\n"
        "    case \"${{COMP_WORDS[1]}}\" in\n{}"
        "        *) words=\"{}{}\" ;;\n"
        "    esac\n"
        "    COMPREPLY=($(compgen -W \"$words\" -- \"$current\") $(compgen -f -- \"$current\"))\n"
        "}}\n"
        "complete -o filenames -F _tracewright tracewright\n",
        cases, names, words_of(app));
}

}  // namespace tracewright
