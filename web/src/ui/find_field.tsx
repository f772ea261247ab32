/** A field that narrows a list down while one writes in it. Enter looks for a name, and sends no form. */
export function FindField({ wanted, find }: { readonly wanted: string; readonly find: (wanted: string) => void }) {
  return (
    <label class="beside">
      Find
      <input
        type="search"
        value={wanted}
        onInput={(event) => {
          find(event.currentTarget.value);
        }}
        onKeyDown={(event) => {
          if (event.key === "Enter") event.preventDefault();
        }}
      />
    </label>
  );
}
