#pragma once

#include "cli/file_options.hpp"
#include "cli/streams.hpp"

namespace tracewright {

enum class MeasuresForm { table, csv, json };

struct MeasuresOptions {
    MeasuresForm form = MeasuresForm::table;
    bool intervals = true;
    int jobs = 0;  ///< 0: as many as the machine has
};

/// The measures of each file, in parallel, in the order the files were given.
Exit measures(const FileOptions& files, const MeasuresOptions& options, const Streams& streams);

}  // namespace tracewright
