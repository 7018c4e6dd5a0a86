module example.test/bad

go 1.26
