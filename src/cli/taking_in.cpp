#include <fmt/ostream.h>

#include "command.h"
#include "taking_in_text.h"
#include "witnessmark/app/take_in.h"
#include "witnessmark/base/counted.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

std::string_view in_words(TranscriptChanges::Kind kind) {
  switch (kind) {
    case TranscriptChanges::Kind::unchanged:
      return "as before";
    case TranscriptChanges::Kind::first:
      return "taken in";
    case TranscriptChanges::Kind::read_anew:
      return "read anew";
    case TranscriptChanges::Kind::revised:
      return "revised";
  }
  return "";
}

void print_transcript(Command& command, const TakenTranscript& taken) {
  fmt::print(command.out(), "  {}: {} ({}, version {}), words {}, turns {}; {}\n", taken.interview,
             in_words(taken.changes.kind), taken.reader, taken.changes.version, taken.words, taken.utterances,
             visible(taken.encoding_remark));
  if (taken.changes.carried > 0)
    fmt::print(command.out(), "    {} found again\n", counted(taken.changes.carried, "claim"));
  for (const LostAnchor& lost : taken.changes.lost)
    fmt::print(command.out(), "    not found again: “{}”{}\n", visible(lost.quote),
               lost.decided ? " (decided)" : "");
}

void add_interviews(CLI::App& program, Command& command) {
  struct Options {
    std::string file, table;
    InterviewFilePaths paths;
  };
  auto options = std::make_shared<Options>();
  CLI::App* app =
      program.add_subcommand("take-in", "Take in interviews, narrators and transcripts from spreadsheets");
  app->add_option("FILE", options->file, "Site file")->required();
  app->add_option("INTERVIEWS", options->table,
                  "interviews.csv; persons.csv, service.csv, speakers.csv, releases.csv "
                  "and passages.csv are looked for beside it")
      ->required();
  app->add_option("--persons", options->paths.persons, "Persons, if elsewhere");
  app->add_option("--service", options->paths.service, "Service periods, if elsewhere");
  app->add_option("--speakers", options->paths.speakers, "Speaker labels, if elsewhere");
  app->add_option("--releases", options->paths.releases, "Releases, if elsewhere");
  app->add_option("--passages", options->paths.passages,
                  "Passages under conditions of their own, if elsewhere");
  command.add_coder_option(*app);
  command.add_data_options(*app);
  app->callback([options, &command] {
    auto site = command.open_to_edit(options->file);
    if (!site) return command.fail(site.error());
    const InterviewsTakenIn taken =
        take_in_interviews(*site, options->table, options->paths, command.surroundings());
    command.report(taken.diagnostics);
    if (!taken.done) return command.end_with(kBadInput);
    print_counts(command, "interviews", taken.changes.interviews);
    print_counts(command, "persons", taken.changes.persons);
    print_counts(command, "service periods", taken.changes.service);
    print_counts(command, "speakers", taken.changes.speakers);
    print_counts(command, "releases", taken.changes.releases);
    print_counts(command, "passages under conditions", taken.changes.passages);
    print_changed(command, taken.changes.changed);
    for (const TakenTranscript& transcript : taken.transcripts) print_transcript(command, transcript);
  });
}

void add_evidence(CLI::App& program, Command& command) {
  struct Options {
    std::string file, table;
    RegisterFilePaths paths;
  };
  auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("evidence", "Take in the dated event register");
  app->add_option("FILE", options->file, "Site file")->required();
  app->add_option("ENTRIES", options->table,
                  "entries.csv, or an XML register; sources.csv, derives.csv, itinerary.csv "
                  "and named-events.csv are looked for beside it")
      ->required();
  app->add_option("--sources", options->paths.sources, "Sources, if elsewhere");
  app->add_option("--derives", options->paths.derives, "What a source rests on, if elsewhere");
  app->add_option("--itinerary", options->paths.itinerary, "Itinerary, if elsewhere");
  app->add_option("--events", options->paths.events, "Named events, if elsewhere");
  command.add_coder_option(*app);
  app->callback([options, &command] {
    auto site = command.open_to_edit(options->file);
    if (!site) return command.fail(site.error());
    const EvidenceTakenIn taken =
        take_in_evidence(*site, options->table, options->paths, command.surroundings());
    command.report(taken.diagnostics);
    if (!taken.done) return command.end_with(kBadInput);
    print_counts(command, "entries", taken.changes.entries);
    print_counts(command, "sources", taken.changes.sources);
    print_counts(command, "derivations", taken.changes.derivations);
    print_counts(command, "stays", taken.changes.stays);
    print_counts(command, "named events", taken.changes.events);
    print_changed(command, taken.changes.changed);
  });
}

void add_list(CLI::App& program, Command& command) {
  struct Options {
    std::string file, kind, list;
  };
  auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("list", "Take in an authority list of places or equipment");
  app->add_option("FILE", options->file, "Site file")->required();
  app->add_option("KIND", options->kind, "places or equipment")
      ->required()
      ->check(CLI::IsMember({"places", "equipment"}));
  app->add_option("LIST", options->list, "CSV, or SKOS in RDF/XML")->required();
  command.add_coder_option(*app);
  app->callback([options, &command] {
    auto site = command.open_to_edit(options->file);
    if (!site) return command.fail(site.error());
    const auto kind =
        options->kind == "places" ? AuthorityList::Kind::places : AuthorityList::Kind::equipment;
    const ListTakenIn taken = take_in_list(*site, kind, options->list, command.surroundings());
    command.report(taken.diagnostics);
    if (!taken.done) return command.end_with(kBadInput);
    print_counts(command, options->kind, taken.changes.terms);
    print_changed(command, taken.changes.changed);
  });
}

}  // namespace

void add_taking_in(CLI::App& program, Command& command) {
  add_interviews(program, command);
  add_evidence(program, command);
  add_list(program, command);
}

}  // namespace witnessmark
