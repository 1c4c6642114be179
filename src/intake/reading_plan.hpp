#pragma once

#include "intake/bring_in.hpp"
#include "intake/file_evidence.hpp"
#include "intake/read_row.hpp"

namespace tracewright {

/// The plan by which one file is read: each choice by the user's option, else by the evidence.
/// Tells every guess in `intake.guesses` with how sure it is, and asks in `intake.questions` where
/// nothing decides: then the plan holds our own guess, and nothing may be stored by it.
ReadingPlan reading_plan(TableShape shape, const FileEvidence& evidence,
                         const IntakeOptions& options, Intake& intake);

}  // namespace tracewright
