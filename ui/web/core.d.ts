// What `src-tauri/web/src/browser.rs` gives a worker; wasm-bindgen writes the module.

declare module '#core' {
  export default function init(): Promise<unknown>;
  export function addFile(handle: unknown): void;
  export function freeFiles(): number;
  export function open(languages: string): void;
  export function readOnly(languages: string, files: Uint8Array[]): void;
  export function strand(languages: string, why?: string): void;
  export function ask(command: string, given: string): string;
  export function setReader(isThere: boolean): void;
  export function reading(): string | undefined;
  export function read(reading: string): string;
  export function offers(): boolean;
  export function importFile(name: string, bytes: Uint8Array): string;
  export function dropIn(name: string, bytes: Uint8Array): void;
  export function keepPhoto(id: string, name: string, small?: Uint8Array): string;
  export function photo(id: string, photo: string): Uint8Array | undefined;
  export function exportFiles(id: string, wanted: string): string | (string | Uint8Array)[];
  export function search(order: string, report: (found: string) => void): string;
}

// The same for `src-tauri/press/src/browser.rs`.
declare module '#press' {
  export default function init(): Promise<unknown>;
  export function print(
    job: string,
    photos: (string | Uint8Array)[],
    report: (done: number, all: number) => void,
  ): Uint8Array;
}
