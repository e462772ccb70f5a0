#include "witnessmark/read/conclusion_files.h"

#include <algorithm>

#include "read/tables/references.h"
#include "read/tables/table_files.h"
#include "read/tables/terms.h"

namespace witnessmark {
namespace {

class ConclusionRows {
 public:
  ConclusionRows(const FileReader& files, const AuthorityLists& lists)
      : tables_(files, out_.diagnostics, out_.files_read), terms_(&lists, references_) {}

  ConclusionFilesReading read(const ConclusionFilePaths& paths) {
    const Table conclusions = table(paths, paths.conclusions, "conclusions");
    const Table enquiries = table(paths, paths.enquiries, "enquiries");
    const Table searches = table(paths, paths.searches, "searches");
    for_each_row(conclusions, out_.diagnostics, [this](RowReader& row) { read_conclusion(row); });
    for_each_row(enquiries, out_.diagnostics, [this](RowReader& row) { read_enquiry(row); });
    for_each_row(searches, out_.diagnostics, [this](RowReader& row) { read_search(row); });
    out_.unresolved = references_.unresolved();
    out_.ok = std::none_of(out_.diagnostics.begin(), out_.diagnostics.end(),
                           [](const Diagnostic& one) { return one.severity == Diagnostic::Severity::error; });
    return std::move(out_);
  }

 private:
  Table table(const ConclusionFilePaths& paths, const std::optional<std::filesystem::path>& given,
              std::string_view name) {
    if (!given && !paths.conclusions) return {std::string(name), "", column_descriptions(name), {}, {}};
    return tables_.read_beside(paths.conclusions.value_or(""), given, name, true);
  }

  void read_conclusion(RowReader& row) {
    Conclusion made;
    made.key = row.key("conclusion");
    references_.define(KeyKind::conclusion, made.key, "conclusion", row);
    made.wording = row.text("wording");
    made.reasons = row.text("reasons");
    made.author = row.text("author");
    made.date = row.dated("date");
    made.subject = terms_.find(AuthorityList::Kind::equipment, "subject", row);
    made.place = terms_.find(AuthorityList::Kind::places, "place", row);
    made.evidence = row.keys("evidence");
    references_.use({KeyKind::entry, KeyKind::stay, KeyKind::source, KeyKind::interview, KeyKind::claim},
                    made.evidence, "evidence", row);
    made.published = row.text("published");
    made.replaces = row.keys("replaces");
    if (std::find(made.replaces.begin(), made.replaces.end(), made.key) != made.replaces.end() &&
        !made.key.empty())
      row.fail("replaces", "names the conclusion itself", "name earlier ones");
    references_.use({KeyKind::conclusion}, made.replaces, "replaces", row);
    made.notes = row.with_extra(row.text("notes"));
    if (row.ok()) out_.file.conclusions.push_back(std::move(made));
  }

  void read_enquiry(RowReader& row) {
    Enquiry made;
    made.key = row.key("enquiry");
    made.question = row.text("question");
    made.answer = row.text("answer");
    made.sent_to = row.text("sent_to");
    made.author = row.text("author");
    made.date = row.dated("date");
    made.conclusions = row.keys("conclusions");
    references_.use({KeyKind::conclusion}, made.conclusions, "conclusions", row);
    made.notes = row.with_extra(row.text("notes"));
    if (row.ok()) out_.file.enquiries.push_back(std::move(made));
  }

  void read_search(RowReader& row) {
    Search made;
    made.key = row.key("search");
    made.source = row.key("source");
    references_.use(KeyKind::source, made.source, "source", row);
    made.subject = terms_.find(AuthorityList::Kind::equipment, "subject", row);
    made.place = terms_.find(AuthorityList::Kind::places, "place", row);
    if (row.ok() && made.subject.empty() && made.place.empty())
      row.fail("subject", "and place are empty", "say what was looked for, or where");
    made.when = row.dated("when");
    made.found = row.choice("found") == "something" ? Search::Found::something : Search::Found::nothing;
    made.author = row.text("author");
    made.date = row.dated("date");
    made.notes = row.with_extra(row.text("notes"));
    if (row.ok()) out_.file.searches.push_back(std::move(made));
  }

  ConclusionFilesReading out_;
  TableFiles tables_;
  References references_;
  Terms terms_;
};

}  // namespace

ConclusionFilesReading read_conclusion_files(const FileReader& files, const AuthorityLists& lists,
                                             const ConclusionFilePaths& paths) {
  return ConclusionRows(files, lists).read(paths);
}

}  // namespace witnessmark
