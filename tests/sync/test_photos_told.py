"""Photos that are told of: web/sync/photo-transfer.js by itself, run by deno, with no storage."""

import json
import subprocess

from deno import find_deno_bin

from identify.shipped import WEB

SCRIPT = """
const [{ tellOfPhotos }, { look, remove, write }] = await Promise.all(
  ["sync/photo-transfer.js", "data/store.js"].map((path) => import(%s + path)),
);
for (const id of ["first", "second", "third"]) {
  const blob = new Blob([id]);
  await write("photos", undefined, { id, width: 3, height: 2, full: blob, small: blob });
}
const digest = crypto.subtle.digest.bind(crypto.subtle);
let sums = 0;
crypto.subtle.digest = async (...given) => {
  sums += 1;
  if (sums === 6) await remove("photos", "second"); // as its person does meanwhile
  return digest(...given);
};
await tellOfPhotos(new Set());
const told = await look(["journal"], (there) => there.all("journal"));
console.log(JSON.stringify(told.map(({ record, type }) => [record, type])));
"""


def test_a_photo_that_is_deleted_while_it_is_told_of_is_not_told_of():
    script = SCRIPT % json.dumps(WEB.as_uri() + "/")
    command = [find_deno_bin(), "run", "--quiet", "--no-config", "--allow-read"]
    command += ["--location", "http://localhost/", "-"]
    done = subprocess.run(command, input=script, capture_output=True, text=True, check=True)
    assert json.loads(done.stdout) == [["first", "photo"], ["third", "photo"]]
