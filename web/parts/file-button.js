import { el } from "./element.js";

/** A button that asks for a file. */
export function fileButton(label, chosen, props) {
  const input = el("input", { type: "file", class: "unseen", ...props });
  input.addEventListener("change", async () => {
    const [file] = input.files;
    if (file) await chosen(file);
    input.value = "";
  });
  return el("label", { class: "plain file" }, label, input);
}
