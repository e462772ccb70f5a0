#include "read/transcripts/stamp_order.h"

#include <fmt/format.h>

#include "witnessmark/model/transcript.h"

namespace witnessmark {

std::vector<bool> keep_in_order(const std::vector<PlacedStamp>& stamps, std::string_view source,
                                std::vector<Diagnostic>& diagnostics) {
  std::vector<Millisecond> times;
  times.reserve(stamps.size());
  for (const PlacedStamp& stamp : stamps) times.push_back(stamp.time);
  std::vector<bool> keep = keep_in_order(times);
  for (std::size_t i = 0; i < stamps.size(); ++i) {
    if (keep[i]) continue;
    std::size_t last = i;
    while (last + 1 < stamps.size() && !keep[last + 1]) ++last;
    const PlacedStamp& first = stamps[i];
    std::string message =
        i == last
            ? fmt::format("the time {} does not fit the order of those around it and is left out",
                          to_timecode(first.time))
            : fmt::format(
                  "{} times, from {} here to {} in line {}, do not fit the order of those around them and "
                  "are left out",
                  last - i + 1, to_timecode(first.time), to_timecode(stamps[last].time), stamps[last].line);
    diagnostics.push_back(
        {Diagnostic::Severity::warning,
         {std::string(source), first.line, first.column, std::move(message),
          "times count from the start of one recording; where a second tape starts anew, add the "
          "length of the first or make it an interview of its own"}});
    i = last;
  }
  return keep;
}

void check_length(const std::vector<PlacedStamp>& stamps, const std::vector<bool>& keep,
                  Millisecond recording_length, std::string_view source,
                  std::vector<Diagnostic>& diagnostics) {
  for (std::size_t i = 0; i < stamps.size(); ++i) {
    if (!keep[i] || stamps[i].time <= recording_length) continue;
    diagnostics.push_back({Diagnostic::Severity::warning,
                           {std::string(source), stamps[i].line, stamps[i].column,
                            fmt::format("the time {} lies past the recording's end, {}",
                                        to_timecode(stamps[i].time), to_timecode(recording_length)),
                            "check the recording length or the time"}});
    return;
  }
}

}  // namespace witnessmark
