pragma application_id = 1768187513;
pragma user_version = 5;
CREATE TABLE meta (name text primary key, value text not null) strict;
CREATE TABLE ops (
            seq integer primary key,
            id text not null unique,
            record text not null,
            content text not null,
            scrubbed integer not null default 0,
            gone integer not null default 0
        , trail text not null default '', sum text not null default '') strict;
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
CREATE TABLE aside (
            id text not null,
            content text not null,
            why text not null
        ) strict;
insert into meta values ('epoch', '0123456789abcdef0123456789abcdef');
insert into ops values (1, 'dyyyyyyyyyyyyyyyy.1', 'r0001', '{"count":0,"fields":{"called":"Tank engine","trashed":""},"group":"g1","id":"dyyyyyyyyyyyyyyyy.1","parents":[],"record":"r0001","time":"2026-05-01T10:00:00.000Z","type":"piece","undoes":"","wall":1777629600000,"what":"New piece"}', 0, 0, '7129cddb0cf3b8d1ed250d0eacbe92ae', '343b2161aeba024922799ef45d7de1783cafcc44f462c4bb21b3c9454d4b2852');
insert into ops values (2, 'dyyyyyyyyyyyyyyyy.2', 'r0001', '{"count":0,"fields":{"notes":"Côté gauche ½"},"group":"g1","id":"dyyyyyyyyyyyyyyyy.2","parents":["dyyyyyyyyyyyyyyyy.1"],"record":"r0001","time":"2026-05-01T10:00:00.000Z","type":"piece","undoes":"","wall":1777629600001,"what":"New piece"}', 0, 0, '11d3784eb84dd057bedd08526e682b81', '2e3a0bd5abae21206f72e7f9e1e0ef25845df754d65efea23cad84733c4dc9f8');
insert into ops values (3, 'dzzzzzzzzzzzzzzzz.1', 'r0002', '{"count":0,"fields":{},"group":"g1","id":"dzzzzzzzzzzzzzzzz.1","parents":[],"record":"r0002","scrubbed":true,"time":"2026-05-01T10:00:00.000Z","type":"piece","undoes":"","wall":1777629600002,"what":"Deleted for good"}', 1, 0, '112823551eeafc64943e83fe50e1513d', 'c927bd04a39539a7ed456a599679ac5cf88d38c7c87916f6921a6811baf3d7c8');
insert into ops values (4, 'dzzzzzzzzzzzzzzzz.2', 'r0002', '{"count":0,"fields":{"gone":true},"group":"g1","id":"dzzzzzzzzzzzzzzzz.2","parents":["dzzzzzzzzzzzzzzzz.1"],"record":"r0002","time":"2026-05-01T10:00:00.000Z","type":"piece","undoes":"","wall":1777629600003,"what":"New piece"}', 0, 1, '8c4c90a5825ffc5ebe1a0be9f22ef057', 'b007a24ff7cdfa78ca9dd4713124b9c998c8fa14fcff385a50b125f2482e2110');
insert into devices values ('k0123', 'Phone', X'0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F0F', '2026-05-01T10:00:00+00:00', '2026-05-01T10:00:00+00:00', '');
insert into photos values ('abababababababababababababababababababababababababababababababab', 1234, '2026-05-01T10:00:00+00:00');
