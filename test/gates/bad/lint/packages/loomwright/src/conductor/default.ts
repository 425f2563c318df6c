export default function unnamed(): number {
  return 1;
}
