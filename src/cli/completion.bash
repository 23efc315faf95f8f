# SPDX-License-Identifier: MIT
# bash completion for sillet. It asks the program itself what it takes, so it cannot fall behind.

_sillet_options() { # the lines "  --option VALUE" of a command's help
    "$1" "$2" --help 2>/dev/null | sed -n 's/^  \(-[^ ]*\).*/\1/p'
}

_sillet_value() { # what stands behind an option in a command's help
    "$1" "$2" --help 2>/dev/null | sed -n "s/^  $3 \\([^ ]*\\)\$/\\1/p"
}

_sillet() {
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]}
    local program=$1 command=${COMP_WORDS[1]} value
    COMPREPLY=()
    if [ "$COMP_CWORD" -eq 1 ]; then
        mapfile -t COMPREPLY < <(compgen -W "$("$program" --help 2>/dev/null |
            sed -n 's/^  sillet \([a-z]*\) .*  .*/\1/p') --help --version" -- "$word")
        return
    fi
    case $word in
    -*)
        mapfile -t COMPREPLY < <(compgen -W "$(_sillet_options "$program" "$command") --help" -- "$word")
        return
        ;;
    esac
    case $before in
    -*) value=$(_sillet_value "$program" "$command" "$before") ;;
    esac
    case $value in
    "") ;;
    *[!A-Z]*)
        mapfile -t COMPREPLY < <(compgen -W "${value//|/ }" -- "$word")
        return
        ;;
    LENGTH) return ;;
    esac
    case $command in
    start | sheet) mapfile -t COMPREPLY < <(compgen -W "$("$program" profiles 2>/dev/null)" -- "$word") ;;
    esac
    if [ "$command" != start ]; then
        compopt -o filenames 2>/dev/null
        mapfile -t -O "${#COMPREPLY[@]}" COMPREPLY < <(compgen -f -- "$word")
    fi
}

complete -F _sillet sillet
