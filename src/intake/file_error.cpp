#include "intake/file_error.hpp"

namespace tracewright {

const char* code_of(FileErrorKind kind) {
    switch (kind) {
        case FileErrorKind::not_readable:
            return "not_readable";
        case FileErrorKind::empty:
            return "empty";
        case FileErrorKind::not_a_table:
            return "not_a_table";
        case FileErrorKind::archive:
            return "archive";
        case FileErrorKind::broken_workbook:
            return "broken_workbook";
        case FileErrorKind::too_large:
            return "too_large";
        case FileErrorKind::no_time_column:
            return "no_time_column";
        case FileErrorKind::no_value_column:
            return "no_value_column";
        case FileErrorKind::needs_answer:
            return "needs_answer";
    }
    return "";
}

std::string FileError::sentence() const {
    std::string text = file;
    if (line > 0) {
        text += ":" + std::to_string(line);
        if (column > 0) {
            text += ":" + std::to_string(column);
        }
    }
    if (kind == FileErrorKind::needs_answer) {  // what was found is a question
        return text + ": " + found + " Nothing is stored before it is answered, with " +
               what_to_do + ".";
    }
    text += ": found " + found + ", expected " + expected;
    return what_to_do.empty() ? text : text + "; " + what_to_do;
}

}  // namespace tracewright
