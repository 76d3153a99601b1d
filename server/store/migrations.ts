/** Steps of the stored form, in order, never edited once released; the database counts those it has taken. */
export const migrations: readonly string[] = [
  `create table plans (
     id text primary key,
     version integer not null,
     created_at text not null
   );
   create table plan_versions (
     plan_id text not null references plans(id) on delete cascade,
     version integer not null,
     title text not null,
     body text not null,
     saved_at text not null,
     primary key (plan_id, version)
   );`,
  `create table own_versions (
     version integer primary key,
     what text not null,
     undoes integer references own_versions(version),
     saved_at text not null
   );
   create table own_records (
     list text not null check (list in ('materials', 'transformations')),
     id text not null,
     version integer not null references own_versions(version),
     body text,
     primary key (list, id, version)
   );`,
]
