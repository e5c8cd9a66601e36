# crumbnote: what people type. `make help` lists the targets.
#
#   BUILD=DIR     where everything made goes (default: build)
#   SANITIZE=1    address and undefined-behaviour sanitizers, in a folder of their own
#   STRICT=1      warnings are errors (the push check sets it)
#   V=1           shows whole commands
#   PREFIX, DESTDIR  for install

BUILD   ?= build
PREFIX  ?= /usr/local
DESTDIR ?=
CC      ?= cc
WORKERS ?= 2

# -- what Debian packages it takes; `make deps` installs those that are missing ------------------
DEBIAN_BUILD := gcc libc6-dev libcmark-dev libyaml-dev libjansson-dev libxxhash-dev libutf8proc-dev \
                liblpsolve55-dev libgumbo-dev libexpat1-dev libmicrohttpd-dev zlib1g-dev libbrotli-dev \
                libvips-dev pkg-config
DEBIAN_TEST  := libcmocka-dev nginx-light curl git libxml2-utils chromium fonts-dejavu-core valgrind clang-format zsh \
                clang libclang-rt-14-dev
SUDO := $(if $(filter 0,$(shell id -u)),,sudo)

# -- flags -----------------------------------------------------------------------------------------
OUT      := $(BUILD)$(if $(SANITIZE),/sanitize)
WARNINGS := -Wall -Wextra -Wpedantic -Wshadow -Wconversion $(if $(STRICT),-Werror)
# Control-flow protection is asked for where the processor has it.
CONTROL  := $(shell $(CC) -fcf-protection -E -x c /dev/null >/dev/null 2>&1 && echo -fcf-protection)
HARDEN   := -fstack-protector-strong -fstack-clash-protection $(CONTROL) -fPIE \
            $(if $(SANITIZE),,-U_FORTIFY_SOURCE -D_FORTIFY_SOURCE=2)
,        := ,
CHECKS   := $(if $(SANITIZE),-fsanitize=address$(,)undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
OPTIMISE ?= $(if $(SANITIZE),-O1,-O2)
CFLAGS_OURS := -std=c11 -D_GNU_SOURCE -Isrc -I$(OUT) $(OPTIMISE) -g $(WARNINGS) $(HARDEN) $(CHECKS) $(CFLAGS)
LDFLAGS_OURS := -pie -Wl,-z,relro,-z,now,-z,noexecstack $(CHECKS) $(LDFLAGS)
# lp_solve comes as an archive alone; with the archives of what it takes, starting loads nothing more.
SOLVER := -llpsolve55 -l:libcolamd.a -l:libsuitesparseconfig.a -ldl
# libgumbo likewise.
LIBS := -lcmark -lyaml -ljansson -lxxhash -lutf8proc $(SOLVER) -l:libgumbo.a -lexpat -lz -lbrotlienc -lm -lpthread

Q := $(if $(V),,@)
say = @$(if $(V),:,echo '  $(1)')

# What makes the pictures is a program of its own, with libraries of its own.
PICTURE_CFLAGS = $(shell pkg-config --cflags vips | sed 's/-I/-isystem /g')
PICTURE_LIBS = $(shell pkg-config --libs vips) -lexpat

# -- files -----------------------------------------------------------------------------------------
# src/reference/embed.c is a tool of the build: it turns the reference, the themes and the files of a
# new site folder into C.
SOURCES := $(filter-out src/reference/embed.c src/pictures/%,$(wildcard src/*/*.c))
OBJECTS := $(SOURCES:%.c=$(OUT)/%.o) $(OUT)/reference_data.o
LIBRARY := $(OUT)/libcrumbnote.a
PROGRAM := $(OUT)/crumbnote
PICTURES := $(OUT)/crumbnote-pictures
PICTURE_OBJECTS := $(patsubst %.c,$(OUT)/%.o,$(wildcard src/pictures/*.c))
EMBEDDED := $(wildcard src/reference/*.yaml) \
            $(wildcard themes/*/*) $(shell find src/commands/start src/commands/hook src/preview/page -type f)
UNIT_TESTS := $(patsubst tests/%.c,$(OUT)/tests/%,$(wildcard tests/unit/*.c tests/published/*.c))
TOOLS      := $(patsubst tests/%.c,$(OUT)/tests/%,$(wildcard tests/tools/*.c))
SHIM       := $(OUT)/tests/faults/shim.so
BENCHES    := $(patsubst tests/%.c,$(OUT)/tests/%,$(wildcard tests/bench/*.c))

.PHONY: all site test check bench lighthouse fuzz analyse format lint install uninstall clean deps deps-test help
.DELETE_ON_ERROR:

all: $(PROGRAM) $(PICTURES)

help:
	@echo 'make            build the program: $(PROGRAM)'
	@echo 'make site       build it and write the demo site to $(BUILD)/site'
	@echo 'make test       build everything and run every test (also: make check)'
	@echo 'make bench      speed and memory, as ratios measured in one run'
	@echo 'make lighthouse the scores of the demo pages (npm packages of its own)'
	@echo 'make fuzz       a short run of every fuzz target (SECONDS_EACH=20)'
	@echo 'make format     format the C sources;  make lint  check them'
	@echo 'make install    into $$(DESTDIR)$$(PREFIX);  make uninstall  takes it out again'
	@echo 'make deps       install the Debian packages that are missing'
	@echo 'make clean      remove everything made'
	@echo 'Variables: BUILD=DIR SANITIZE=1 STRICT=1 V=1 PREFIX=DIR DESTDIR=DIR'

# -- packages ---------------------------------------------------------------------------------------
# Asks dpkg first: without a network a machine that has everything still builds.
define install_missing
@missing=$$(for p in $(1); do \
    dpkg-query -W -f='$${Status}' $$p 2>/dev/null | grep -q 'ok installed' || echo $$p; done); \
if [ -n "$$missing" ]; then echo "installing:" $$missing; \
    $(SUDO) apt-get update -qq && \
    $(SUDO) env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends \
        $$missing >$(BUILD)/apt.log 2>&1 || { cat $(BUILD)/apt.log; exit 1; }; fi
endef

$(BUILD)/deps.ok: Makefile | $(BUILD)
	$(call install_missing,$(DEBIAN_BUILD))
	@touch $@

$(BUILD)/deps-test.ok: Makefile | $(BUILD)
	$(call install_missing,$(DEBIAN_TEST))
	@command -v npm >/dev/null || { $(SUDO) apt-get update -qq; \
	    $(SUDO) apt-get install -y -qq --no-install-recommends nodejs npm >>$(BUILD)/apt.log 2>&1; }
	@touch $@

$(BUILD):
	@mkdir -p $@

deps: $(BUILD)/deps.ok
deps-test: $(BUILD)/deps.ok $(BUILD)/deps-test.ok

# -- the program --------------------------------------------------------------------------------------
$(OUT)/src/%.o: src/%.c | $(BUILD)/deps.ok
	@mkdir -p $(@D)
	$(call say,cc   $@)
	$(Q)$(CC) $(CFLAGS_OURS) $(MORE_CFLAGS) $(EARLY) -include base/forbidden.h -MMD -MP -c $< -o $@

# Its header speaks of a function that ours may not call, so it goes first.
$(OUT)/src/base/linear.o: EARLY := -include lpsolve/lp_lib.h

# The tool reads YAML as the program does.
EMBED_PARTS := $(patsubst %.c,$(OUT)/%.o,$(filter-out src/base/linear.c,$(wildcard src/base/*.c)) \
                 src/read/encoding.c \
                 $(wildcard src/read/yaml*.c))
$(OUT)/embed: $(OUT)/src/reference/embed.o $(EMBED_PARTS)
	$(call say,cc   $@)
	$(Q)$(CC) $(LDFLAGS_OURS) $^ -lyaml -lutf8proc -lxxhash -lm -o $@

# The list of files is kept so that adding or removing one is noticed too.
$(OUT)/embedded.list: FORCE | $(BUILD)/deps.ok
	@mkdir -p $(@D)
	@echo $(EMBEDDED) | cmp -s - $@ || echo $(EMBEDDED) >$@
FORCE:

$(OUT)/reference_data.c: $(OUT)/embed $(OUT)/embedded.list $(EMBEDDED)
	$(call say,make $@)
	$(Q)$(OUT)/embed $(sort $(EMBEDDED)) >$@

$(OUT)/reference_data.o: $(OUT)/reference_data.c src/reference/reference.h
	$(call say,cc   $@)
	$(Q)$(CC) $(CFLAGS_OURS) -c $< -o $@

$(LIBRARY): $(OBJECTS)
	@rm -f $@
	$(call say,ar   $@)
	$(Q)ar rcs $@ $^

$(PROGRAM): $(OUT)/src/main.o $(LIBRARY)
	$(call say,cc   $@)
	$(Q)$(CC) $(LDFLAGS_OURS) $^ $(LIBS) -o $@

$(PICTURE_OBJECTS): MORE_CFLAGS = $(PICTURE_CFLAGS)
$(PICTURES): $(PICTURE_OBJECTS) $(LIBRARY)
	$(call say,cc   $@)
	$(Q)$(CC) $(LDFLAGS_OURS) $^ $(PICTURE_LIBS) $(LIBS) -o $@

site: $(PROGRAM) $(PICTURES)
	$(PROGRAM) site content --out $(BUILD)/site

# -- tests ---------------------------------------------------------------------------------------------
$(OUT)/tests/%: tests/%.c $(LIBRARY) | $(BUILD)/deps-test.ok
	@mkdir -p $(@D)
	$(call say,cc   $@)
	$(Q)$(CC) $(CFLAGS_OURS) -Itests -MMD -MP $< $(LIBRARY) $(LDFLAGS_OURS) $(LIBS) -lcmocka -lbrotlidec -o $@

# Preloaded by tests/site/faults.test: without sanitizers, which want to be first.
$(SHIM): tests/faults/shim.c | $(BUILD)/deps-test.ok
	@mkdir -p $(@D)
	$(call say,cc   $@)
	$(Q)$(CC) -std=gnu11 $(WARNINGS) -O2 -fPIC -shared $< -ldl -o $@

test check: $(PROGRAM) $(PICTURES) $(UNIT_TESTS) $(TOOLS) $(SHIM)
	@$(PROGRAM) site content --out $(BUILD)/site
	@OUT=$(OUT) BUILD=$(BUILD) SANITIZE=$(SANITIZE) FAULTS=$(FAULTS) tests/run $(UNIT_TESTS)

bench: $(PROGRAM) $(BENCHES)
	@OUT=$(OUT) BUILD=$(BUILD) tests/bench/run

lighthouse: site | $(BUILD)/deps-test.ok
	@BUILD=$(BUILD) tests/lighthouse/scores

SECONDS_EACH ?= 20
fuzz: $(LIBRARY) | $(BUILD)/deps-test.ok
	@OUT=$(OUT) BUILD=$(BUILD) SECONDS_EACH=$(SECONDS_EACH) tests/fuzz/run

# -- care of the sources ----------------------------------------------------------------------------------
C_FILES = $(shell git ls-files '*.c' '*.h')
format: | $(BUILD)/deps-test.ok
	$(Q)clang-format -i $(C_FILES)

# Slower than the tests, and no part of them.
analyse: $(OUT)/reference_data.c
	$(call install_missing,clang-tidy cppcheck)
	@OUT=$(OUT) tests/tools/analyse

lint: | $(BUILD)/deps-test.ok
	$(Q)clang-format --dry-run -Werror $(C_FILES)
	tests/tools/rooms

# -- installing ---------------------------------------------------------------------------------------------
install: $(PROGRAM) $(PICTURES)
	install -d $(DESTDIR)$(PREFIX)/bin $(DESTDIR)$(PREFIX)/share/man/man1 \
	    $(DESTDIR)$(PREFIX)/share/bash-completion/completions \
	    $(DESTDIR)$(PREFIX)/share/zsh/site-functions \
	    $(DESTDIR)$(PREFIX)/share/crumbnote/schemas
	install -m 755 $(PROGRAM) $(DESTDIR)$(PREFIX)/bin/crumbnote
	install -m 755 $(PICTURES) $(DESTDIR)$(PREFIX)/bin/crumbnote-pictures
	install -m 644 src/commands/crumbnote.1 $(DESTDIR)$(PREFIX)/share/man/man1/crumbnote.1
	install -m 644 src/commands/completion.bash \
	    $(DESTDIR)$(PREFIX)/share/bash-completion/completions/crumbnote
	install -m 644 src/commands/completion.zsh \
	    $(DESTDIR)$(PREFIX)/share/zsh/site-functions/_crumbnote
	install -m 644 src/schemas/*.schema.json $(DESTDIR)$(PREFIX)/share/crumbnote/schemas

uninstall:
	rm -f $(DESTDIR)$(PREFIX)/bin/crumbnote $(DESTDIR)$(PREFIX)/bin/crumbnote-pictures \
	    $(DESTDIR)$(PREFIX)/share/man/man1/crumbnote.1 \
	    $(DESTDIR)$(PREFIX)/share/bash-completion/completions/crumbnote \
	    $(DESTDIR)$(PREFIX)/share/zsh/site-functions/_crumbnote
	rm -f $(DESTDIR)$(PREFIX)/share/crumbnote/schemas/*.schema.json
	-rmdir $(DESTDIR)$(PREFIX)/share/crumbnote/schemas $(DESTDIR)$(PREFIX)/share/crumbnote 2>/dev/null

clean:
	find $(BUILD) -mindepth 1 ! -name .gitignore -delete

-include $(shell find $(OUT) -name '*.d' 2>/dev/null)
