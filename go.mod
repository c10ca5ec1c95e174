module softloft

go 1.26
