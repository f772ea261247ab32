/** The caution that stands wherever people will work hard (design: action words, no diagnosis). */
export function Caution() {
  return (
    <p class="caution">
      <strong>Caution.</strong> Forecasts are ranges, never promises. Stop and get medical help for chest pain, dizziness,
      sudden severe pain, or dark urine after hard unfamiliar work. In heat: slower, shorter, shade, water, or not at
      all. Your gym's own screening, local rules and licensed professionals come first, above all for minors,
      pregnancy and return after illness.
    </p>
  );
}
