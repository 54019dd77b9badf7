"""A law has a test: what the manual shows of a console is what the program prints. Each ```console block
is a run of commands behind `$ `, each followed by what it prints, both streams. A line `...` stands for
any number of lines, `...` in a line for any part of it. The files that a page makes stay for its later blocks.
Usage: console.py PROGRAM ROOT PAGE..."""
import os
import re
import shutil
import subprocess
import sys
import tempfile


def commands(page):
    """(command, the lines expected of it) in their order."""
    for block in re.findall(r"^```console\n(.*?)^```$", page, re.MULTILINE | re.DOTALL):
        if not block.startswith("$ "):
            sys.exit("a console block begins with something that is no command: " + block[:60])
        for part in re.split(r"^\$ ", block, flags=re.MULTILINE)[1:]:
            command, _, printed = part.partition("\n")
            yield command, printed.splitlines()


def expression(lines):
    """The lines as a regular expression of the whole output."""
    made = ""
    for line in lines:
        made += r"(?:.*\n)*?" if line == "..." else ".*".join(re.escape(part) for part in line.split("...")) + r"\n"
    return re.compile(made)


def run(command, place, program, last):
    """What it prints, its exit status; $? is that of the command before."""
    env = dict(os.environ, PATH=os.path.join(place, ".bin") + os.pathsep + os.environ["PATH"])
    script = f"(exit {last}); {command}"
    done = subprocess.run(["sh", "-c", script], cwd=place, env=env, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                          stdin=subprocess.DEVNULL, text=True, check=False)
    return done.stdout, done.returncode


def try_page(path, program, root):
    """How many commands were tried, and what was wrong."""
    with open(path, encoding="utf-8") as file:
        page = file.read()
    faults, tried, last = [], 0, 0
    with tempfile.TemporaryDirectory() as place:
        shutil.copytree(os.path.join(root, "examples"), os.path.join(place, "examples"))
        os.mkdir(os.path.join(place, ".bin"))
        os.symlink(os.path.abspath(program), os.path.join(place, ".bin", "tiptoe"))
        for command, expected in commands(page):
            printed, last = run(command, place, program, last)
            tried += 1
            if not expression(expected).fullmatch(printed):
                shown = "\n".join(printed.splitlines()[:40])
                faults.append(f"{path}: `{command}` prints otherwise:\n{shown}")
    return tried, faults


def main(program, root, pages):
    faults, tried = [], 0
    for page in pages:
        n, wrong = try_page(page, program, root)
        if n == 0:
            wrong.append(f"{page} shows no console")
        tried += n
        faults += wrong
    print(f"{tried} commands of {len(pages)} pages were tried")
    sys.exit("\n".join(faults) if faults or not pages else 0)


main(sys.argv[1], sys.argv[2], sys.argv[3:])
