#include "witnessmark/store/site_file.h"

#include <doctest/doctest.h>
#include <sys/wait.h>

#include <fstream>

#include "store/sample_site.h"
#include "witnessmark/base/embedded_schema.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/search.h"
#include "witnessmark/store/undo.h"

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

SiteInfo info() {
  return {{}, "Tender Guillemot", "2031-05-04", "built-in"};
}

std::string error_of(const Result<SiteFile>& result) {
  return result.ok() ? "ok" : result.error().message;
}

/// What a child process that tries to edit says.
std::string edit_in_another_process(const std::filesystem::path& path) {
  int ends[2];
  REQUIRE(pipe(ends) == 0);
  const pid_t child = fork();
  if (child == 0) {
    std::string said = error_of(SiteFile::edit(path, editor("B. Other", 2)));
    const auto written = write(ends[1], said.data(), said.size());
    _exit(written < 0 ? 1 : 0);
  }
  close(ends[1]);
  char buffer[200];
  const ssize_t length = read(ends[0], buffer, sizeof buffer);
  close(ends[0]);
  waitpid(child, nullptr, 0);
  return std::string(buffer, static_cast<std::size_t>(std::max<ssize_t>(length, 0)));
}

}  // namespace

TEST_CASE("a new site file closes to one file and opens again as it was") {
  const TemporaryFolder folder;
  const auto path = folder / "guillemot.site";
  SiteInfo made;
  {
    SiteFile site = must(SiteFile::create(path, info(), editor()));
    made = site.info();
    must(save_interviews(site, interview_file()));
    CHECK(folder.files().size() == 3);
  }
  CHECK(folder.files() == std::vector<std::string>{"guillemot.site"});
  {
    const SiteFile site = must(SiteFile::edit(path, editor("B. Other", 2)));
    CHECK(site.info() == made);
    CHECK(!made.id.is_nil());
    CHECK(load_interviews(site).interviews.size() == 2);
  }
  {
    const SiteFile site = must(SiteFile::read(path));
    CHECK(!site.can_edit());
    CHECK(findings(site) == std::vector<std::string>{});
  }
  CHECK(folder.files() == std::vector<std::string>{"guillemot.site"});
}

TEST_CASE("creating never writes over a file, but takes an empty one") {
  const TemporaryFolder folder;
  std::ofstream(folder / "notes.txt") << "notes";
  std::ofstream(folder / "empty.site");
  CHECK(error_of(SiteFile::create(folder / "notes.txt", info(), editor())) == "exists already");
  CHECK(error_of(SiteFile::create(folder / "none" / "x.site", info(), editor())) ==
        "its folder does not exist");
  CHECK(error_of(SiteFile::create(folder / "empty.site", info(), editor())) == "ok");
  CHECK(error_of(SiteFile::create(folder / "empty.site", info(), editor())) == "exists already");
  CHECK(
      error_of(SiteFile::create(folder / "y.site", info(), editor("  "))).starts_with("the name of the one"));
}

TEST_CASE("a name that looks like a URI is a name") {
  const TemporaryFolder folder;
  const auto before = std::filesystem::current_path();
  std::filesystem::current_path(folder / "");
  CHECK(error_of(SiteFile::create("file:x?mode=memory", info(), editor())) == "ok");
  std::filesystem::current_path(before);
  CHECK(folder.files() == std::vector<std::string>{"file:x?mode=memory"});
}

TEST_CASE("one edits, others read and are told so") {
  const TemporaryFolder folder;
  const auto path = folder / "guillemot.site";
  SiteFile first = must(SiteFile::create(path, info(), editor()));
  CHECK(error_of(SiteFile::edit(path, editor("B. Other", 2))) == "somebody else is editing it");
  CHECK(edit_in_another_process(path) == "somebody else is editing it");

  const SiteFile reader = must(SiteFile::read(path));
  must(save_interviews(first, interview_file()));
  CHECK(load_interviews(reader).interviews.size() == 2);
  CHECK_THROWS_AS(SiteTransaction(const_cast<SiteFile&>(reader)), std::logic_error);
}

TEST_CASE("the mark of the editor goes when the editor closes, also with a reader still there") {
  const TemporaryFolder folder;
  const auto path = folder / "guillemot.site";
  auto first = std::make_unique<SiteFile>(must(SiteFile::create(path, info(), editor())));
  auto reader = std::make_unique<SiteFile>(must(SiteFile::read(path)));
  first.reset();
  CHECK(edit_in_another_process(path) == "ok");
  CHECK(load_interviews(*reader).interviews.empty());
  reader.reset();
  CHECK(folder.files() == std::vector<std::string>{"guillemot.site"});
}

TEST_CASE("what is no site file is refused with a reason") {
  const TemporaryFolder folder;
  std::ofstream(folder / "text") << std::string(5000, 'x');
  std::ofstream(folder / "empty");
  CHECK(RawFile(folder / "other").run("CREATE TABLE t (x)") == "ok");
  must(SiteFile::create(folder / "newer", info(), editor()));
  CHECK(RawFile(folder / "newer").run("PRAGMA user_version = 99") == "ok");
  struct Row {
    const char* file;
    const char* message;
  };
  for (const Row& row : {Row{"text", "is not a site file"}, Row{"empty", "is not a site file"},
                         Row{"other", "is not a site file"}, Row{"none", "there is no such site file"},
                         Row{"", "is a folder, not a site file"}}) {
    CAPTURE(row.file);
    CHECK(error_of(SiteFile::edit(folder / row.file, editor())) == row.message);
    CHECK(error_of(SiteFile::read(folder / row.file)) == row.message);
  }
  CHECK(error_of(SiteFile::read(folder / "newer")).starts_with("is of version 99"));
}

TEST_CASE("a file whose structure somebody altered is refused") {
  const TemporaryFolder folder;
  for (const char* sql :
       {"CREATE TRIGGER t AFTER INSERT ON persons BEGIN DELETE FROM entries; END",
        "CREATE VIEW v AS SELECT 1", "DROP TRIGGER journal_stays", "CREATE TABLE extra (x)"}) {
    const auto path = folder / "altered.site";
    must(SiteFile::create(path, info(), editor()));
    CHECK(RawFile(path).run(sql) == "ok");
    CAPTURE(sql);
    CHECK(error_of(SiteFile::edit(path, editor())) == "its tables are not those of a site file");
    CHECK(error_of(SiteFile::read(path)) == "its tables are not those of a site file");
    std::filesystem::remove(path);
  }
}

TEST_CASE("a file of version 2 is brought up to date with what it holds") {
  const TemporaryFolder folder;
  const auto path = folder / "old.site";
  std::ifstream dump(WITNESSMARK_SOURCE_DIR "/tests/store/files/version-2.sql");
  REQUIRE(dump);
  CHECK(RawFile(path).run({std::istreambuf_iterator<char>(dump), {}}) == "ok");
  CHECK(error_of(SiteFile::read(path)) == "is of an older version");
  {
    SiteFile site = must(SiteFile::edit(path, editor()));
    CHECK(search_talk(site, {"brass lamp"}).size() == 1);
    CHECK(load_claims(site).size() == 4);
    CHECK(findings(site) == std::vector<std::string>{});
    // What the same coder had done then can be undone now.
    CHECK(must(undo(site))->words == "claim added in aske-1");
    CHECK(must(undo(site))->words == "decision in aske-1");
    CHECK(!must(undo(site)));
    CHECK(load_claims(site).size() == 3);
    CHECK(findings(site) == std::vector<std::string>{});
  }
  CHECK(error_of(SiteFile::read(path)) == "ok");
}

TEST_CASE("the numbers of the SQL files run from 1 without a gap to the current version") {
  int files = 0;
  for (const EmbeddedSchema& schema : embedded_schemas()) files += schema.path.starts_with("sql/") ? 1 : 0;
  CHECK(files == SiteFile::current_version());
}

TEST_CASE("a copy made while it is in use is whole, and a site file of its own") {
  const TemporaryFolder folder;
  SiteFile site = must(SiteFile::create(folder / "a.site", info(), editor()));
  must(save_interviews(site, interview_file()));
  must(site.copy_to(folder / "b.site"));
  must(save_transcript(site, transcript_file("aske-1", kTalk)));
  CHECK(site.copy_to(folder / "b.site").error().message == "exists already");
  CHECK(site.copy_to(folder / "none" / "b.site").error().message == "its folder does not exist");

  const SiteFile copy = must(SiteFile::edit(folder / "b.site", editor("B. Other", 2)));
  CHECK(copy.info() == site.info());
  CHECK(load_interviews(copy).interviews.size() == 2);
  CHECK(!load_transcript(copy, "aske-1"));
  CHECK(findings(copy) == std::vector<std::string>{});
}

TEST_CASE("work without commit leaves no trace, inside other work too") {
  SiteFile site = site_in_memory();
  const auto events = count_events(site);
  {
    SiteTransaction outer(site);
    must(save_interviews(site, interview_file()));
    CHECK(count_events(site) > events);
  }
  CHECK(count_events(site) == events);
  {
    SiteTransaction outer(site);
    must(save_interviews(site, interview_file()));
    {
      SiteTransaction inner(site);
      must(save_transcript(site, transcript_file("aske-1", kTalk)));
    }
    outer.commit();
  }
  CHECK(load_interviews(site).interviews.size() == 2);
  CHECK(!load_transcript(site, "aske-1"));
  CHECK(findings(site) == std::vector<std::string>{});
}
