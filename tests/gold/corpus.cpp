#include "corpus.h"

#include "witnessmark/read/list_files.h"
#include "witnessmark/read/transcript_reader.h"

namespace witnessmark::gold {

Corpus read_corpus(const std::string& folder) {
  const SystemFileReader files;
  Corpus corpus;
  corpus.folder = folder;
  corpus.file = read_interview_files(files, folder + "interviews.csv").file;
  const auto list = [&](const char* name, AuthorityList::Kind kind) {
    return AuthorityList(kind, read_list(files.read(folder + name).value(), name, kind).terms);
  };
  corpus.lists.places = list("places.csv", AuthorityList::Kind::places);
  corpus.lists.equipment = list("equipment.csv", AuthorityList::Kind::equipment);
  corpus.evidence = read_register_files(files, folder + "entries.csv", &corpus.lists).evidence;
  for (const Stay& stay : corpus.evidence.itinerary) corpus.locations.push_back(stay.locations);
  return corpus;
}

ReadingContext context_of(const Corpus& corpus, const Language& language, const TermFinder& places,
                          const TermFinder& equipment) {
  ReadingContext context;
  context.language = &language;
  context.places = &places;
  context.equipment = &equipment;
  context.persons = corpus.file.persons;
  context.speakers = corpus.file.speakers;
  context.events = corpus.evidence.events;
  context.locations = corpus.locations;
  return context;
}

void with_interview(
    const Corpus& corpus, const Language& language, const std::string& key,
    const std::function<void(const ReadingContext&, Transcript, const std::vector<Sentence>&)>& use) {
  const TermFinder places(corpus.lists.places, language);
  const TermFinder equipment(corpus.lists.equipment, language);
  ReadingContext context = context_of(corpus, language, places, equipment);
  for (const Interview& interview : corpus.file.interviews) {
    if (interview.key != key) continue;
    context.interview = &interview;
    const std::string path = corpus.folder + interview.transcript_path;
    Transcript transcript = read_transcript(SystemFileReader().read(path).value(), path).value();
    const std::vector<Sentence> sentences = split_sentences(transcript, language.abbreviations());
    use(context, std::move(transcript), sentences);
  }
}

}  // namespace witnessmark::gold
