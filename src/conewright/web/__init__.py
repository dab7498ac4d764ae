"""The pages, served to this machine: requests in, pages out; must not know the command line."""
