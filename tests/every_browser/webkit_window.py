#!/usr/bin/python3
"""A window of WebKitGTK of a phone's size, whose storage is a folder, for WebKitWebDriver to drive.

Run by Debian's own python3, which has GTK (python3-gi, gir1.2-webkit2-4.1):
webkit_window.py FOLDER WIDTH HEIGHT [--room BYTES] [--private]
"""

import argparse
import os
import sys

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import Gtk, WebKit2  # noqa: E402

parser = argparse.ArgumentParser()
parser.add_argument("folder")
parser.add_argument("width", type=int)
parser.add_argument("height", type=int)
parser.add_argument("--room", type=int, default=0)
parser.add_argument("--private", action="store_true")
given, _ = parser.parse_known_args()  # the driver may add an address

folders = {
    "base_data_directory": f"{given.folder}/data",
    "base_cache_directory": f"{given.folder}/cache",
}
if given.room > 0:  # told as a share of the whole disk
    disk = os.statvfs(given.folder)
    folders["origin_storage_ratio"] = given.room / (disk.f_frsize * disk.f_blocks)
manager = WebKit2.WebsiteDataManager(**({"is_ephemeral": True} if given.private else folders))
context = WebKit2.WebContext.new_with_website_data_manager(manager)
context.set_automation_allowed(True)


def download(_context, running):
    running.set_allow_overwrite(True)
    running.connect(
        "decide-destination",
        lambda one, name: one.set_destination(f"file://{given.folder}/{name}") or True,
    )


def create(_session, *_):
    view = WebKit2.WebView(web_context=context, is_controlled_by_automation=True)
    window = Gtk.Window()
    window.set_decorated(False)
    window.set_default_size(given.width, given.height)
    window.add(view)
    window.show_all()
    view.connect("close", lambda _view: window.destroy())
    view.connect(
        "web-process-terminated",
        lambda _view, why: print("the web process ended:", why, file=sys.stderr, flush=True),
    )
    window.present()
    window.get_window().focus(0)  # there is no window manager: else the page has no focus
    view.grab_focus()
    return view


def started(_context, session):
    info = WebKit2.ApplicationInfo()
    info.set_name("MiniBrowser")  # the name that the driver asks for
    version = (WebKit2.get_major_version, WebKit2.get_minor_version, WebKit2.get_micro_version)
    info.set_version(*(part() for part in version))
    session.set_application_info(info)
    session.connect("create-web-view", create)


context.connect("automation-started", started)
context.connect("download-started", download)
Gtk.main()
