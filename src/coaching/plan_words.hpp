#pragma once

#include "coaching/plan.hpp"

namespace tracewright {

/// What is to be minded with a candidate that may be offered.
std::vector<std::string> cautions_of(const CandidateChange& change, const CareInput& care);

/// What is said of a candidate: the gain, the client's own days, others apart, effort, verdict.
std::vector<std::string> sentences_of(const RankedCandidate& candidate, double worth);

/// The candidate that the plan's sentence is about; null without any worth a talk.
const RankedCandidate* leading(const Plan& plan);

std::string plan_sentence(const Plan& plan, const CareInput& care);

}  // namespace tracewright
