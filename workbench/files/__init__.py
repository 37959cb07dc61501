"""Files: the project file, saving without loss, recovery, recent files, and what ships beside the code.

May import everything but the window and the command line. Start reading at ``project_file``;
its format is described in ``docs/reference/project-file.md``.
"""
