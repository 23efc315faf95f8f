/* SPDX-License-Identifier: MIT */
/* Feeds files, or all files of folders, to a fuzz target, to run a corpus without a fuzzer. */
#include <dirent.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size);

static int replay_file(const char *path)
{
    enum { MOST = 1 << 20 };
    FILE *file = fopen(path, "rb");
    uint8_t *bytes = malloc(MOST);
    if (!file || !bytes) {
        perror(path);
        exit(1);
    }
    size_t size = fread(bytes, 1, MOST, file);
    fclose(file);
    LLVMFuzzerTestOneInput(bytes, size);
    free(bytes);
    return 1;
}

static int replay(const char *path)
{
    DIR *folder = opendir(path);
    int count = 0;
    if (!folder) {
        return replay_file(path);
    }
    for (struct dirent *entry; (entry = readdir(folder));) {
        char inner[4096];
        int needed = snprintf(inner, sizeof inner, "%s/%s", path, entry->d_name);
        if (entry->d_name[0] != '.' && needed > 0 && (size_t)needed < sizeof inner) {
            count += replay(inner);
        }
    }
    closedir(folder);
    return count;
}

int main(int argc, char **argv)
{
    int count = 0;
    for (int i = 1; i < argc; i++) {
        count += replay(argv[i]);
    }
    printf("%d passed, 0 failed\n", count);
    return 0;
}
