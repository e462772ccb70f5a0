// Any bytes as each of the CSV files: whatever is read without error must hold keys, and faults must name a
// place.
#include <cstdint>
#include <cstdlib>
#include <string>

#include "witnessmark/read/interview_files.h"
#include "witnessmark/read/list_files.h"
#include "witnessmark/read/register_files.h"

using namespace witnessmark;

namespace {

constexpr const char* kNames[] = {"interviews", "persons",      "service", "speakers",
                                  "releases",   "passages",     "entries", "sources",
                                  "itinerary",  "named-events", "derives"};

/// One file of any bytes, the others as they should be.
class OneFile final : public FileReader {
 public:
  OneFile(std::string name, std::string bytes) : name_(std::move(name)), bytes_(std::move(bytes)) {}
  Result<std::string> read(const std::filesystem::path& path) const override {
    if (path.stem() == name_) return bytes_;
    if (path.stem() == "interviews") return std::string("interview,narrators,date\n1,tusk,1994\n");
    if (path.stem() == "entries")
      return std::string("entry,source,statement,subject,when\n1,log,present,lamp,1955\n");
    return std::string("person,name\ntusk,Tusk\n");
  }
  bool exists(const std::filesystem::path& path) const override {
    return path.stem() == name_ || path.stem() == "persons";
  }

 private:
  std::string name_, bytes_;
};

template <typename Reading>
void check(const Reading& reading) {
  bool errors = false;
  for (const Diagnostic& diagnostic : reading.diagnostics) {
    errors |= diagnostic.severity == Diagnostic::Severity::error;
    if (diagnostic.what.source.empty() || diagnostic.what.message.empty()) std::abort();
  }
  if (reading.ok == errors) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const std::string bytes(reinterpret_cast<const char*>(data) + 1, size - 1);
  const std::size_t which = data[0] % (std::size(kNames) + 2);
  if (which >= std::size(kNames)) {
    const auto kind =
        which == std::size(kNames) ? AuthorityList::Kind::places : AuthorityList::Kind::equipment;
    check(read_list(bytes, "list.csv", kind, ListFormat::csv));
    return 0;
  }
  const OneFile files(kNames[which], bytes);
  if (which < 6) {
    check(read_interview_files(files, "interviews.csv"));
  } else {
    const AuthorityLists lists;
    check(read_register_files(files, "entries.csv", data[0] & 128 ? &lists : nullptr));
  }
  return 0;
}
