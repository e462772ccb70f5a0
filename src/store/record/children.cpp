#include "store/record/tables.h"

namespace witnessmark {

void load_children(StoreConnection& connection, Person& person) {
  SqlStatement& select = connection.prepared(
      "SELECT dated_written, dated, dated_calendar, role, notes FROM service_periods WHERE person = ? ORDER "
      "BY n");
  select.bind(person.key);
  while (select.step()) {
    ServicePeriod& period = person.service.emplace_back();
    period.person = person.key;
    ReadColumns reader(select);
    fields(reader, period);
  }
  select.reset();
}

void save_children(StoreConnection& connection, const Person& person) {
  connection.prepared("DELETE FROM service_periods WHERE person = ?").bind(person.key).run();
  for (std::size_t n = 0; n < person.service.size(); ++n) {
    SqlStatement& insert = connection.prepared(
        "INSERT INTO service_periods (person, n, dated_written, dated, dated_calendar, role, notes) "
        "VALUES (?, ?, ?, ?, ?, ?, ?)");
    insert.bind(person.key).bind(n);
    BindColumns binder(insert);
    fields(binder, person.service[n]);
    insert.run();
  }
}

void load_children(StoreConnection& connection, Interview& interview) {
  SqlStatement& select =
      connection.prepared("SELECT role, person FROM interview_people WHERE interview = ? ORDER BY role, n");
  select.bind(interview.key);
  while (select.step()) {
    auto& people = select.text_view(0) == "narrator" ? interview.narrators : interview.interviewers;
    people.push_back(select.text(1));
  }
  select.reset();
}

namespace {

void save_people(StoreConnection& connection, const std::string& interview, std::string_view role,
                 const std::vector<std::string>& persons) {
  for (std::size_t n = 0; n < persons.size(); ++n) {
    connection.prepared("INSERT INTO interview_people (interview, role, n, person) VALUES (?, ?, ?, ?)")
        .bind(interview)
        .bind(role)
        .bind(n)
        .bind(persons[n])
        .run();
  }
}

}  // namespace

void save_children(StoreConnection& connection, const Interview& interview) {
  connection.prepared("DELETE FROM interview_people WHERE interview = ?").bind(interview.key).run();
  save_people(connection, interview.key, "narrator", interview.narrators);
  save_people(connection, interview.key, "interviewer", interview.interviewers);
}

}  // namespace witnessmark
