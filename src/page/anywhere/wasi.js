// SPDX-License-Identifier: MIT
// What the module asks of a system (WASI, preview 1): files to read that it was given, a clock, and nothing else. Nothing is
// written, and there is no way from here to the device's own files.

const ok = 0, badFile = 8, isFolder = 31, isMissing = 44, noFolder = 54, readOnly = 69;
const folder = 3, plain = 4; // kinds of file
const root = 3; // the descriptor a module finds open
const creates = 1, wantsFolder = 2;

export class Stopped extends Error {}

// files: Map of a path without a slash before it to its bytes. The folders are those the paths have.
function tree(files) {
  const all = new Map([["", new Set()]]);
  for (const [path, bytes] of files) {
    const names = path.split("/");
    for (let k = 0; k < names.length; k++) {
      const here = names.slice(0, k + 1).join("/");
      all.get(names.slice(0, k).join("/")).add(names[k]);
      if (k === names.length - 1) all.set(here, bytes);
      else if (!all.has(here)) all.set(here, new Set());
    }
  }
  return all;
}

// The functions a module imports; memory: () => the module's.
export function system(files, environment, memory) {
  const all = tree(files);
  const paths = [...all.keys()];
  const open = new Map([[root, {path: "", at: 0}]]);
  const strings = Object.entries(environment).map(([key, value]) => new TextEncoder().encode(`${key}=${value}\0`));
  const view = () => new DataView(memory().buffer);
  const bytesAt = (at, size) => new Uint8Array(memory().buffer, at, size);
  const what = (path) => all.get(path);
  const kind = (path) => (what(path) instanceof Set ? folder : plain);

  // The path meant from an open folder; null if it leads out of everything.
  function resolve(from, at, size) {
    const names = from.path ? from.path.split("/") : [];
    for (const name of new TextDecoder().decode(bytesAt(at, size)).split("/")) {
      if (name === "..") names.pop();
      else if (name && name !== ".") names.push(name);
    }
    return names.join("/");
  }

  function about(path, at) {
    const out = view();
    bytesAt(at, 64).fill(0);
    out.setBigUint64(at + 8, BigInt(paths.indexOf(path) + 1), true);
    out.setUint8(at + 16, kind(path));
    out.setBigUint64(at + 24, 1n, true);
    out.setBigUint64(at + 32, BigInt(kind(path) === plain ? what(path).length : 0), true);
    return ok;
  }

  // Pieces of memory in a row: the address and size of each.
  function* pieces(at, count) {
    for (let k = 0; k < count; k++) yield [view().getUint32(at + 8 * k, true), view().getUint32(at + 8 * k + 4, true)];
  }

  const wasi = {
    environ_sizes_get(count, size) {
      view().setUint32(count, strings.length, true);
      view().setUint32(size, strings.reduce((sum, one) => sum + one.length, 0), true);
      return ok;
    },
    environ_get(list, at) {
      for (const [k, one] of strings.entries()) {
        view().setUint32(list + 4 * k, at, true);
        bytesAt(at, one.length).set(one);
        at += one.length;
      }
      return ok;
    },
    clock_time_get(clock, precision, at) {
      view().setBigUint64(at, BigInt(Date.now()) * 1000000n, true);
      return ok;
    },
    fd_prestat_get(fd, at) {
      if (fd !== root) return badFile;
      view().setUint32(at, 0, true);
      view().setUint32(at + 4, 1, true);
      return ok;
    },
    fd_prestat_dir_name(fd, at) {
      bytesAt(at, 1)[0] = "/".charCodeAt(0);
      return fd === root ? ok : badFile;
    },
    fd_fdstat_get(fd, at) {
      if (!open.has(fd)) return badFile;
      bytesAt(at, 24).fill(0);
      view().setUint8(at, kind(open.get(fd).path));
      view().setBigUint64(at + 8, ~0n & 0x1fffffffn, true);
      view().setBigUint64(at + 16, ~0n & 0x1fffffffn, true);
      return ok;
    },
    fd_fdstat_set_flags: (fd) => (open.has(fd) ? ok : badFile),
    fd_filestat_get: (fd, at) => (open.has(fd) ? about(open.get(fd).path, at) : badFile),
    path_filestat_get(fd, flags, at, size, out) {
      if (!open.has(fd)) return badFile;
      const path = resolve(open.get(fd), at, size);
      return all.has(path) ? about(path, out) : isMissing;
    },
    path_open(fd, lookup, at, size, wanted, rights, inherited, flags, out) {
      if (!open.has(fd)) return badFile;
      const path = resolve(open.get(fd), at, size);
      if (!all.has(path)) return wanted & creates ? readOnly : isMissing;
      if (wanted & wantsFolder && kind(path) !== folder) return noFolder;
      let free = root + 1;
      while (open.has(free)) free++;
      open.set(free, {path, at: 0});
      view().setUint32(out, free, true);
      return ok;
    },
    fd_close: (fd) => (fd !== root && open.delete(fd) ? ok : badFile),
    fd_read(fd, list, count, out) {
      const file = open.get(fd);
      if (!file) return badFile;
      if (kind(file.path) === folder) return isFolder;
      let done = 0;
      for (const [at, size] of pieces(list, count)) {
        const part = what(file.path).subarray(file.at, file.at + size);
        bytesAt(at, part.length).set(part);
        file.at += part.length;
        done += part.length;
      }
      view().setUint32(out, done, true);
      return ok;
    },
    fd_seek(fd, offset, from, out) {
      const file = open.get(fd);
      if (!file) return badFile;
      const start = [0, file.at, kind(file.path) === plain ? what(file.path).length : 0][from];
      file.at = Math.max(0, start + Number(offset));
      view().setBigUint64(out, BigInt(file.at), true);
      return ok;
    },
    // An entry is cut off where there is no room for it, and asked for again with more.
    fd_readdir(fd, at, size, cookie, out) {
      const file = open.get(fd);
      if (!file) return badFile;
      if (kind(file.path) !== folder) return noFolder;
      let used = 0;
      for (const [k, name] of [...what(file.path)].entries()) {
        if (k < Number(cookie)) continue;
        const path = file.path ? `${file.path}/${name}` : name;
        const letters = new TextEncoder().encode(name);
        const entry = new Uint8Array(24 + letters.length);
        const head = new DataView(entry.buffer);
        head.setBigUint64(0, BigInt(k + 1), true);
        head.setBigUint64(8, BigInt(paths.indexOf(path) + 1), true);
        head.setUint32(16, letters.length, true);
        head.setUint8(20, kind(path));
        entry.set(letters, 24);
        const part = entry.subarray(0, size - used);
        bytesAt(at + used, part.length).set(part);
        used += part.length;
        if (used === size) break;
      }
      view().setUint32(out, used, true);
      return ok;
    },
    // Only what a library says on its way down would be written.
    fd_write(fd, list, count, out) {
      let done = 0;
      for (const [, size] of pieces(list, count)) done += size;
      view().setUint32(out, done, true);
      return ok;
    },
    proc_exit(code) {
      throw new Stopped(`ended with ${code}`);
    },
  };
  return {wasi_snapshot_preview1: wasi};
}
