package pack
