pragma application_id = 1768187513;
pragma user_version = 3;
CREATE TABLE meta (name text primary key, value text not null) strict;
CREATE TABLE ops (
            seq integer primary key,
            id text not null unique,
            record text not null,
            content text not null,
            scrubbed integer not null default 0,
            gone integer not null default 0
        ) strict;
CREATE INDEX ops_record on ops (record);
CREATE TABLE devices (
            id text primary key,
            name text not null,
            token blob not null unique,
            made text not null,
            seen text not null,
            revoked text not null default ''
        ) strict;
CREATE TABLE pairings (
            id integer primary key,
            secret blob not null unique,
            salt blob not null,
            code blob not null,
            until integer not null,
            tries integer not null default 0
        ) strict;
CREATE TABLE photos (
            sha text primary key,
            size integer not null,
            made text not null
        ) strict;
insert into meta values ('epoch', '0123456789abcdef0123456789abcdef');
insert into ops values (1, 'dyyyyyyyyyyyyyyyy.1', 'r0001', '{"count":0,"fields":{"called":"Tank engine","trashed":""},"group":"g1","id":"dyyyyyyyyyyyyyyyy.1","parents":[],"record":"r0001","time":"2026-05-01T10:00:00.000Z","type":"piece","undoes":"","wall":1777629600000,"what":"New piece"}', 0, 0);
insert into ops values (2, 'dyyyyyyyyyyyyyyyy.2', 'r0001', '{"count":0,"fields":{"notes":"Côté gauche ½"},"group":"g1","id":"dyyyyyyyyyyyyyyyy.2","parents":["dyyyyyyyyyyyyyyyy.1"],"record":"r0001","time":"2026-05-01T10:00:00.000Z","type":"piece","undoes":"","wall":1777629600001,"what":"New piece"}', 0, 0);
insert into ops values (3, 'dzzzzzzzzzzzzzzzz.1', 'r0002', '{"count":0,"fields":{},"group":"g1","id":"dzzzzzzzzzzzzzzzz.1","parents":[],"record":"r0002","scrubbed":true,"time":"2026-05-01T10:00:00.000Z","type":"piece","undoes":"","wall":1777629600002,"what":"Deleted for good"}', 1, 0);
insert into ops values (4, 'dzzzzzzzzzzzzzzzz.2', 'r0002', '{"count":0,"fields":{"gone":true},"group":"g1","id":"dzzzzzzzzzzzzzzzz.2","parents":["dzzzzzzzzzzzzzzzz.1"],"record":"r0002","time":"2026-05-01T10:00:00.000Z","type":"piece","undoes":"","wall":1777629600003,"what":"New piece"}', 0, 1);
insert into devices values ('k0123', 'Phone', X'0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F', '2026-05-01T10:00:00+00:00', '2026-05-01T10:00:00+00:00', '');
insert into photos values ('abababababababababababababababababababababababababababababababab', 1234, '2026-05-01T10:00:00+00:00');
