"""Small tasks of bench/serve: sign in, fetch, and count how soon all listeners hear of a change."""
import json
import resource
import select
import socket
import sys
import time
import urllib.parse
import urllib.request


def sign_in(at, coach, passphrase):
    body = json.dumps({"coach": coach, "passphrase": passphrase}).encode()
    ask = urllib.request.Request(at + "/api/sign-in", body, {"Content-Type": "application/json"})
    with urllib.request.urlopen(ask) as reply:
        cookie = reply.headers["Set-Cookie"].split(";")[0]
        token = json.load(reply)["token"]
    clients = json.loads(get(at + "/api/clients", cookie))["clients"]
    seen = [one for one in clients if one["last_reading"]]
    print(cookie, token, seen[0]["handle"], sep="\n")


def get(url, cookie):
    with urllib.request.urlopen(urllib.request.Request(url, headers={"Cookie": cookie})) as reply:
        return reply.read()


def listeners(at, cookie, token, client, count):
    _, hard = resource.getrlimit(resource.RLIMIT_NOFILE)
    resource.setrlimit(resource.RLIMIT_NOFILE, (hard, hard))
    count = min(count, hard - 100)
    place = urllib.parse.urlsplit(at)
    ask = f"GET /api/events HTTP/1.1\r\nHost: {place.netloc}\r\nCookie: {cookie}\r\n\r\n".encode()
    poll = select.epoll()
    sockets = {}
    begun = time.perf_counter()
    for _ in range(count):
        one = socket.create_connection((place.hostname, place.port))
        one.sendall(ask)
        sockets[one.fileno()] = one
        poll.register(one, select.EPOLLIN)

    def heard(word):
        left = set(sockets)
        while left:
            ready = poll.poll(20)
            if not ready:
                break
            for number, _ in ready:
                if word in sockets[number].recv(4096):
                    left.discard(number)
        return count - len(left)

    print(f"{heard(b': here')} streams open after {time.perf_counter() - begun:.2f} s")
    body = json.dumps({"text": "Invented"}).encode()
    note = urllib.request.Request(f"{at}/api/clients/{client}/notes", body,
                                  {"Content-Type": "application/json", "Cookie": cookie,
                                   "X-Tracewright-Token": token})
    with urllib.request.urlopen(note):
        begun = time.perf_counter()
    print(f"{heard(b'note_added')} reached {time.perf_counter() - begun:.3f} s after the change was acknowledged")


if __name__ == "__main__":
    task, arguments = sys.argv[1], sys.argv[2:]
    if task == "sign-in":
        sign_in(*arguments)
    elif task == "get":
        sys.stdout.buffer.write(get(*arguments))
    else:
        listeners(*arguments[:4], int(arguments[4]))
